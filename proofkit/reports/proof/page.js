"use strict";
// Walking from mark to mark, showing only some of them, and ticking them off.
const rows = [...document.querySelectorAll(".slip li")];
const notes = rows.map((row) => document.getElementById(`m${row.dataset.n}`));
const ticks = rows.map((row) => row.querySelector("input"));
const at = new Map(rows.map((row, place) => [row.dataset.n, place]));
const by = (id) => document.getElementById(id);

// What was ticked off earlier in this browser; a browser may refuse to keep it.
const shelf = `proofkit proof: ${document.body.dataset.book}`;
function remembered() {
  try { return new Set(JSON.parse(localStorage.getItem(shelf) ?? "[]")); } catch { return new Set(); }
}
function remember() {
  try { localStorage.setItem(shelf, JSON.stringify([...done])); } catch { /* then it lasts while the page is open */ }
}
const done = remembered();

let current = -1;
function choose(place) {
  if (current >= 0) {
    notes[current].removeAttribute("aria-current");
    rows[current].classList.remove("current");
  }
  current = place;
  notes[place].setAttribute("aria-current", "true");
  rows[place].classList.add("current");
}

function show(element, block) {
  element.focus({ preventScroll: true });
  element.scrollIntoView({ block });
}

function shown(place) { return place >= 0 && place < rows.length && !rows[place].hidden; }

function step(way) {
  let place = current < 0 && way < 0 ? rows.length : current;
  do { place += way; } while (place >= 0 && place < rows.length && rows[place].hidden);
  if (!shown(place)) return;
  choose(place);
  show(notes[place], "center");
}

function tick(place, ticked) {
  const { key } = rows[place].dataset;
  if (ticked) done.add(key); else done.delete(key);
  ticks[place].checked = ticked;
  notes[place].classList.toggle("ticked", ticked);
  rows[place].classList.toggle("ticked", ticked);
}

function count() {
  const left = ticks.filter((box, place) => !box.checked && !rows[place].hidden).length;
  const all = rows.filter((row) => !row.hidden).length;
  by("left").textContent = all ? `${left} of ${all} left` : "none like that";
}

// Marks in the text by the numbers that they bear, and what each row can be found by.
const strokes = [...document.querySelectorAll("[data-m]")].map((mark) => [mark, mark.dataset.m.split(" ")]);
const others = [...document.querySelectorAll(".elsewhere")];
let findable = null;

function wanted(row, place) {
  const { tier, family } = row.dataset;
  const words = by("words").value.trim().toLowerCase();
  findable ??= rows.map((each) => each.textContent.replace(/\s+/g, " ").toLowerCase());
  return (!by("tier").value || by("tier").value === tier)
    && (!by("family").value || by("family").value === family)
    && (!by("open").checked || !ticks[place].checked)
    && findable[place].includes(words);
}

function sift() {
  const out = rows.map((row, place) => !wanted(row, place));
  out.forEach((hidden, place) => { rows[place].hidden = notes[place].hidden = hidden; });
  for (const slip of document.querySelectorAll(".slip")) slip.hidden = ![...slip.children].some((row) => !row.hidden);
  for (const other of others) other.hidden = out[at.get(other.dataset.n)];
  for (const [mark, numbers] of strokes) mark.classList.toggle("off", numbers.every((n) => out[at.get(n)]));
  count();
}

if (rows.length) {
  document.documentElement.classList.add("scripted");
  rows.forEach((row, place) => { if (done.has(row.dataset.key)) tick(place, true); });
  count();

  by("next").addEventListener("click", () => step(1));
  by("previous").addEventListener("click", () => step(-1));
  for (const id of ["tier", "family", "open"]) by(id).addEventListener("change", sift);
  by("words").addEventListener("input", sift);

  document.addEventListener("change", (event) => {
    const place = ticks.indexOf(event.target);
    if (place < 0) return;
    tick(place, event.target.checked);
    remember();
    count();
  });

  document.addEventListener("focusin", (event) => {
    const place = at.get(event.target.closest("[data-n]:not(.elsewhere)")?.dataset.n);
    if (place !== undefined && place !== current) choose(place);
  });

  document.addEventListener("click", (event) => {
    const link = event.target.closest("a[href^='#']");
    const place = at.get(link?.getAttribute("href").slice(2));
    if (place === undefined || !shown(place)) return;
    event.preventDefault();
    choose(place);
    const toText = link.getAttribute("href").startsWith("#m");
    show(toText ? notes[place] : rows[place].querySelector("a"), toText ? "center" : "nearest");
  });

  document.addEventListener("keydown", (event) => {
    if (event.altKey || event.ctrlKey || event.metaKey || event.shiftKey) return;
    if (event.target.matches("select, [type=search]")) return;
    const ways = { ArrowRight: 1, ArrowLeft: -1 };
    if (Object.hasOwn(ways, event.key)) step(ways[event.key]);
    else if (event.key === " " && event.target.closest("a[data-n]:not(.elsewhere), .slip .no")) {
      ticks[current].click();
    } else return;
    event.preventDefault();
  });
}
