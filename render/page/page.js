"use strict";
// The page asks the program to tell it of each change, and fetches what it
// shows anew. Where the reader has scrolled to stays.
(function () {
  const view = document.getElementById("view");
  const ended = document.getElementById("ended");
  const shown = () => Number(document.getElementById("turn").dataset.turn);
  let wanted = 0; // the turn that the program told of last
  let busy = false;
  let lost = false;

  // One answer at a time, so that an older one never comes after a newer one.
  async function refresh() {
    if (busy) {
      return;
    }
    busy = true;
    try {
      do {
        const answer = await fetch("/view", { cache: "no-store" });
        if (!answer.ok) {
          return;
        }
        const text = await answer.text();
        const at = window.scrollY;
        view.innerHTML = text;
        window.scrollTo(0, at);
      } while (shown() < wanted);
    } catch (gone) {
      lost = true; // events.onerror says so
    } finally {
      busy = false;
    }
  }

  const events = new EventSource("/events");
  events.onmessage = function (event) {
    ended.hidden = true;
    wanted = Number(event.data);
    if (lost || wanted !== shown()) {
      lost = false;
      refresh();
    }
  };
  events.onerror = function () {
    lost = true;
    ended.hidden = false;
  };
})();
