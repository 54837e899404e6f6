"use strict";
// The page asks the program to tell it of each change, and fetches what it
// shows anew. Where the reader has scrolled to stays.
(function () {
  const view = document.getElementById("view");
  const ended = document.getElementById("ended");
  const shown = () => document.getElementById("turn").dataset.turn;
  let lost = false;

  async function refresh() {
    const answer = await fetch("/view", { cache: "no-store" });
    if (!answer.ok) {
      return;
    }
    const at = window.scrollY;
    view.innerHTML = await answer.text();
    window.scrollTo(0, at);
  }

  const events = new EventSource("/events");
  events.onmessage = function (event) {
    ended.hidden = true;
    if (lost || event.data !== shown()) {
      lost = false;
      refresh();
    }
  };
  events.onerror = function () {
    lost = true;
    ended.hidden = false;
  };
})();
