// Moves things in the drawings, by pointer or by keys, and shows what is left around them while
// they move. What can be done here can also be done by writing the place in a form.
"use strict";

(() => {
  const VIEWS = ["plan", "side", "bay plan", "bay front", "bay side"];
  const ARROWS = { ArrowRight: [1, 0], ArrowLeft: [-1, 0], ArrowUp: [0, 1], ArrowDown: [0, -1] };
  let held = null; // what is being moved
  let seq = 0;

  // The view that a part of a drawing is in; none where things cannot be moved in it.
  function viewOf(part) {
    const view = part.closest("[data-view]");
    return view && VIEWS.includes(view.dataset.view) ? view : null;
  }

  // Whether a group is a thing of its own, and not a space around one.
  const isItem = (group) => /^items\.[^.]+$/.test(group.dataset.thing) && viewOf(group);

  const isOf = (group, thing) =>
    group.dataset.thing === thing || group.dataset.thing.startsWith(`${thing}.`);

  // An axis of a drawing as its name and its direction: "-y" is y, backwards.
  const axis = (word) => (word[0] === "-" ? [word.slice(1), -1] : [word, 1]);

  const axesOf = (view) => view.dataset.axes.split(" ").map(axis);

  // Makes the things of all drawings ready: a hand for the pointer, a button for the keys.
  function ready() {
    for (const figure of document.querySelectorAll("figure.draw")) {
      const names = new Set();
      for (const group of figure.querySelectorAll("[data-thing]")) {
        if (!isItem(group)) continue;
        group.classList.add("drags");
        names.add(group.dataset.thing);
      }
      if (!names.size || figure.querySelector(".moves")) continue;
      const line = document.createElement("p");
      line.className = "moves small";
      line.append("Drag in the drawing, or move by keys: ");
      for (const thing of names) {
        const button = document.createElement("button");
        button.type = "button";
        button.className = "btn";
        button.id = `move-${figure.id}-${thing}`;
        button.dataset.moves = thing;
        button.textContent = thing.slice(6);
        button.setAttribute("aria-label", `Move ${thing.slice(6)} by arrow keys`);
        line.append(button, " ");
      }
      figure.querySelector("figcaption, svg:last-of-type").after(line);
    }
  }

  // Takes a thing in hand.
  function take(thing, figure, view, from) {
    const panel = document.createElement("div");
    panel.className = "moving";
    figure.querySelector(".moves").after(panel);
    const groups = [...figure.querySelectorAll("[data-thing]")].filter(
      (group) => isOf(group, thing) && viewOf(group),
    );
    held = { thing, figure, view, from, groups, panel, by: {}, stays: [], busy: false, asks: false, told: 0 };
    figure.classList.add("holds");
    ask();
  }

  // Draws what is held where it is now, in every view of its drawing.
  function draw() {
    for (const group of held.groups) {
      const view = viewOf(group);
      const [right, up] = axesOf(view).map(([name, sign]) => sign * (held.by[name] || 0));
      const mm = Number(view.dataset.mm);
      group.setAttribute("transform", `translate(${right / mm} ${-up / mm})`);
    }
  }

  // Moves what is held so far along the two axes of its view, and asks what that does.
  function moveTo(view, way) {
    axesOf(view).forEach(([name, sign], at) => {
      held.by[name] = sign * Math.round(way[at]) || 0;
    });
    draw();
    ask();
  }

  // Asks what the move does. One request is under way at a time; the newest place goes next, and
  // an answer to an older one is not shown.
  async function ask() {
    const mine = held;
    if (mine.busy) {
      mine.asks = true;
      return;
    }
    mine.busy = true;
    try {
      do {
        mine.asks = false;
        const answer = await send(mine, false);
        if (held === mine && answer.seq === mine.seq) tell(answer);
      } while (held === mine && mine.asks);
    } catch (error) {
      if (held === mine) mine.panel.textContent = error.message;
    } finally {
      mine.busy = false;
    }
  }

  async function send(mine, down) {
    mine.seq = ++seq;
    const { thing, by } = mine;
    return post(`/drag${location.search}`, { seq: mine.seq, thing, by, down });
  }

  async function post(address, what) {
    const answer = await fetch(address, {
      method: "POST",
      headers: {
        accept: "application/json",
        "content-type": "application/json",
        "x-spile-token": document.body.dataset.token,
      },
      body: JSON.stringify(what),
    });
    const kind = answer.headers.get("content-type") || "";
    const told = kind.startsWith("application/json") ? await answer.json() : null;
    if (answer.ok && told) return told;
    const problem = told && told.problems && told.problems[0];
    if (problem) throw new Error(problem.hint ? `${problem.says}; ${problem.hint}.` : problem.says);
    throw new Error(
      answer.status === 409
        ? "The file was changed meanwhile; nothing was written. Load the page again."
        : "This could not be answered; nothing was written.",
    );
  }

  const plain = (parent, name, text, className) => {
    const element = document.createElement(name);
    element.textContent = text;
    if (className) element.className = className;
    parent.append(element);
    return element;
  };

  // Shows what is left around a thing, and what is found of it.
  function tell(answer) {
    const name = held.thing.slice(6);
    held.answer = answer;
    const panel = document.createDocumentFragment();
    const head = plain(panel, "p", "", "moving-head");
    plain(head, "b", name);
    head.append(answer.verdict ? ` ${answer.verdict.says}` : " stands in no bay, so what is left around it is not answered");
    const list = plain(panel, "dl", "");
    const row = (words, figure) => {
      const pair = plain(list, "div", "");
      plain(pair, "dt", words);
      plain(pair, "dd", figure);
    };
    for (const one of answer.around) row(`${one.way}, to ${one.what}`, one.figure);
    for (const one of answer.place) row(`its place: ${one.words}`, one.figure);
    for (const one of answer.found.filter((one) => one.verdict.word === "stop").slice(0, 3)) {
      plain(panel, "p", `stop: ${one.label}${one.figure ? `, ${one.figure}` : ""}`);
    }
    for (const one of answer.stays) {
      if (wants(one.axis)) plain(panel, "p", one.says, "quiet");
    }
    held.panel.replaceChildren(panel);
    clearTimeout(held.told);
    held.told = setTimeout(() => speak(answer, name), 400);
  }

  // Whether the move goes along an axis of the vehicle; a bay's axes are told by what stayed.
  function wants(at) {
    const name = "xyz"[at];
    return held.by[name] || (at === 2 && held.by.up) || Object.keys(held.by).some((one) => held.by[one] && !"xyzup".includes(one));
  }

  // Says the same in a sentence to who cannot see it, once the thing rests.
  function speak(answer, name) {
    const around = answer.around.map((one) => `${one.way} ${one.figure}`).join(", ");
    const verdict = answer.verdict ? answer.verdict.says : "";
    said().textContent = [name, around || answer.place.map((one) => `${one.words} ${one.figure}`).join(", "), verdict]
      .filter(Boolean)
      .join(": ");
  }

  // Leaves everything as it was.
  function letGo(words) {
    if (!held) return;
    clearTimeout(held.told);
    for (const group of held.groups) group.removeAttribute("transform");
    held.panel.remove();
    held.figure.classList.remove("holds");
    held = null;
    if (words) said().textContent = words;
  }

  // Puts what is held down where it is: writes its place, and shows what that did.
  async function putDown() {
    const mine = held;
    if (!Object.values(mine.by).some(Boolean)) return letGo("");
    mine.down = true;
    try {
      const answer = await send(mine, true);
      if (held !== mine) return;
      if (!answer.edits.length) return letGo(answer.stays.map((one) => one.says).join(" "));
      const { edits, job, option, version } = answer;
      const made = await post("/change", { edits, job: job || "", option: option || "", since: version });
      const focus = document.activeElement && document.activeElement.id;
      held = null;
      await show(location.href);
      if (focus) document.getElementById(focus)?.focus({ preventScroll: true });
      did(`${mine.thing.slice(6)} was moved.`, made);
    } catch (error) {
      letGo("");
      did(error.message, { undo: 0 });
    }
  }

  // Says what a change did, with the way back.
  function did(words, made) {
    document.querySelector(".did-move")?.remove();
    const bar = document.createElement("div");
    bar.className = "did-move";
    const says = [words, ...(made.did || [])].join(" ");
    plain(bar, "p", says);
    if (made.undo) {
      const back = plain(bar, "button", "Undo", "btn");
      back.type = "button";
      back.addEventListener("click", undo);
    }
    document.body.append(bar);
    said().textContent = says;
  }

  async function undo() {
    try {
      const made = await post(`/undo`, { "shown-job": shown("job"), "shown-option": shown("option") });
      await show(location.href);
      did("The last change was undone.", { did: made.did, undo: made.undo });
    } catch (error) {
      did(error.message, { undo: 0 });
    }
  }

  const shown = (name) => new URLSearchParams(location.search).get(name) || "";

  // Where a pointer is in a drawing's own units.
  function at(event, view) {
    const svg = view.ownerSVGElement || view;
    const spot = new DOMPoint(event.clientX, event.clientY).matrixTransform(svg.getScreenCTM().inverse());
    const mm = Number(view.dataset.mm);
    return [spot.x * mm, -spot.y * mm];
  }

  document.addEventListener("pointerdown", (event) => {
    const group = event.target.closest?.("[data-thing].drags");
    if (!group || event.button !== 0 || held?.down) return;
    letGo("");
    event.preventDefault();
    const view = viewOf(group);
    take(group.dataset.thing, group.closest("figure.draw"), view, at(event, view));
    held.pointer = event.pointerId;
    group.setPointerCapture(event.pointerId);
  });

  document.addEventListener("pointermove", (event) => {
    if (!held || held.down || held.pointer !== event.pointerId) return;
    const spot = at(event, held.view);
    moveTo(held.view, [spot[0] - held.from[0], spot[1] - held.from[1]]);
  });

  document.addEventListener("pointerup", (event) => {
    if (held && !held.down && held.pointer === event.pointerId) putDown();
  });

  document.addEventListener("pointercancel", (event) => {
    if (held && !held.down && held.pointer === event.pointerId) letGo("");
  });

  document.addEventListener("click", (event) => {
    const button = event.target.closest?.("[data-moves]");
    if (button) takeByKeys(button);
  });

  function takeByKeys(button) {
    if (held) return;
    const figure = button.closest("figure.draw");
    const groups = [...figure.querySelectorAll(".drags")];
    const group = groups.find((one) => one.dataset.thing === button.dataset.moves && one.getClientRects().length);
    if (!group) return;
    take(button.dataset.moves, figure, viewOf(group), null);
    said().textContent =
      "Arrow keys move it by 1 mm, with Shift by 10 mm. Enter puts it down, Escape leaves it where it was.";
  }

  document.addEventListener("keydown", (event) => {
    if ((event.ctrlKey || event.metaKey) && !event.shiftKey && event.key === "z" && !event.target.matches("input, textarea, select")) {
      event.preventDefault();
      if (!held) undo();
      return;
    }
    const button = event.target.closest?.("[data-moves]");
    const way = ARROWS[event.key];
    if (held && event.key === "Escape" && !held.down) {
      event.preventDefault();
      letGo("It stays where it was.");
    } else if (button && way && !held?.down && !event.ctrlKey && !event.altKey && !event.metaKey) {
      event.preventDefault();
      if (!held) takeByKeys(button);
      if (!held) return;
      const step = event.shiftKey ? 10 : 1;
      const now = axesOf(held.view).map(([name, sign]) => sign * (held.by[name] || 0));
      moveTo(held.view, [now[0] + step * way[0], now[1] + step * way[1]]);
    } else if (button && held && event.key === "Enter" && !held.down) {
      event.preventDefault();
      putDown();
    }
  });

  // Whoever leaves the button has let go.
  document.addEventListener("focusout", (event) => {
    if (held && !held.down && held.from === null && event.target.closest("[data-moves]")) letGo("It stays where it was.");
  });

  document.addEventListener("desk:shown", () => {
    letGo("");
    ready();
  });
  ready();
})();
