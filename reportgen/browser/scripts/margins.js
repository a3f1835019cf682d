// The margins of a sheet at either side, in CSS pixels, as the rules for pages state them.
() => {
  const units = { mm: 96 / 25.4, cm: 96 / 2.54, in: 96, pt: 96 / 72, px: 1 };
  const pixels = (length) => {
    const [, number, unit] = /^([\d.]+)([a-z]+)$/.exec(length) || [];
    return unit in units ? number * units[unit] : null;
  };
  const rules = [];
  const collect = (list) => {
    for (const rule of list) {
      if (rule instanceof CSSPageRule && !rule.selectorText) rules.push(rule.style);
      else if (rule.cssRules) collect(rule.cssRules);
    }
  };
  for (const sheet of document.styleSheets) collect(sheet.cssRules);
  const stated = (side) => rules.map((style) => pixels(style[side])).findLast((width) => width !== null);
  return (stated("marginLeft") ?? 96 / 2.54) + (stated("marginRight") ?? 96 / 2.54);
}
