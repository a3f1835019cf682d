// The place on a page that a link named is looked for on the page that it moved to.
"use strict";
if (location.hash) location.replace(document.querySelector("a.moved").href + location.hash);
