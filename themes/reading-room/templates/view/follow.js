// Asks the local server what changed and shows the page anew, at the same height. Never part of a site.
(() => {
  const here = document.currentScript;
  const ask = here.src.replace("follow.js", "changes?seen=");
  const height = "shown-to:" + location.pathname;
  const kept = sessionStorage.getItem(height);
  if (kept) {
    scrollTo(0, Number(kept));
    sessionStorage.removeItem(height);
  }
  const wait = (ms) => new Promise((go) => setTimeout(go, ms));
  const follow = async () => {
    for (;;) {
      try {
        const now = await (await fetch(ask + here.dataset.seen, { cache: "no-store" })).text();
        if (now !== here.dataset.seen) {
          sessionStorage.setItem(height, String(scrollY));
          location.reload();
          return;
        }
      } catch {
        await wait(1000); // the server is away; it may come back
      }
    }
  };
  follow();
})();
