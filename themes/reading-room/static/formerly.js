// Whoever follows a link made under an earlier name is brought to the place itself.
"use strict";
{
  function leadOn() {
    const place = location.hash && document.getElementById(decodeURIComponent(location.hash.slice(1)));
    if (place && place.matches("section [href^='#'][id]")) location.replace(place.hash);
  }
  addEventListener("hashchange", leadOn);
  leadOn();
}
