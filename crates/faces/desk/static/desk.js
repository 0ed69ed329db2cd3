// Puts new content into the open page when a file of the build changed. Everything that the pages
// show and every form works without it.
"use strict";

const said = () => document.getElementById("said");

// Takes the page at an address and puts its parts in place of those that are shown; what was open
// stays open, and what has the focus keeps it.
async function show(address) {
  const answer = await fetch(address, { headers: { accept: "text/html" } });
  const page = new DOMParser().parseFromString(await answer.text(), "text/html");
  const open = [...document.querySelectorAll("details[open]")].map((one) => path(one));
  const focus = document.activeElement && document.activeElement.id;
  for (const part of ["header", "nav.eight", "main", "footer"]) {
    const [from, to] = [page.querySelector(part), document.querySelector(part)];
    if (from && to) to.replaceWith(from);
    else if (to) to.remove();
    else if (from) document.querySelector("main").before(from);
  }
  document.title = page.title;
  document.body.dataset.version = page.body.dataset.version || "";
  document.body.dataset.token = page.body.dataset.token || "";
  for (const one of document.querySelectorAll("details")) one.open = open.includes(path(one));
  if (focus) document.getElementById(focus)?.focus({ preventScroll: true });
  document.dispatchEvent(new CustomEvent("desk:shown"));
}

// Names a part that opens, so that it can be found again on the new page.
function path(details) {
  const near = details.closest("[id]");
  return near ? `${near.id}/${details.className}` : details.className;
}

// Whether somebody is in the middle of writing.
function writing() {
  const at = document.activeElement;
  return at && at.matches("input[type=text], textarea") && at.value !== at.defaultValue;
}

async function follow() {
  for (;;) {
    const since = document.body.dataset.version;
    if (since === undefined) return;
    try {
      const answer = await fetch(`/changed?since=${encodeURIComponent(since)}`);
      const version = answer.ok ? await answer.text() : since;
      if (version !== since && version !== document.body.dataset.version && !writing()) {
        await show(location.href);
        said().textContent = "The files changed; the page shows them as they are now.";
      } else if (version !== since) {
        await new Promise((later) => setTimeout(later, 1000));
      }
    } catch {
      await new Promise((later) => setTimeout(later, 2000));
    }
  }
}

// A question that is followed to a finding opens its working.
function openTarget() {
  const target = document.getElementById(decodeURIComponent(location.hash.slice(1)));
  target?.querySelector("details.working")?.setAttribute("open", "");
}

addEventListener("hashchange", openTarget);
openTarget();
follow();
