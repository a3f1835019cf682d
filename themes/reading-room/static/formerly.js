// Whoever follows a link made under an earlier name is brought to the place itself, so the list of such places at the
// foot of the page, which serves where no script runs, isn't shown.
"use strict";
{
  function leadOn() {
    const place = location.hash && document.getElementById(decodeURIComponent(location.hash.slice(1)));
    if (place && place.matches("section [href^='#'][id]")) location.replace(place.hash);
  }
  document.getElementById("formerly").parentElement.hidden = true;
  addEventListener("hashchange", leadOn);
  leadOn();
}
