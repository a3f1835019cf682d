// With axe-core there: barriers to readers by the success criteria of WCAG 2.2, A and AA, and by its good practices.
async () => {
  const told = await axe.run(document, {
    runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"],
    rules: { "target-size": { enabled: true } },
    resultTypes: ["violations"],
  });
  return told.violations.map((v) => {
    const where = v.nodes.slice(0, 3).map((n) => n.target.join(" "));
    return `${v.help} (${v.id}, ${v.impact}): ${where.join(", ")}`;
  });
}
