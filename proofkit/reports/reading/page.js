"use strict";
// Leafing through the book: one spread lies open at a time, chosen by its column, a link or the arrow keys.
const columns = [...document.querySelectorAll(".columns a")];
const leaves = [...document.querySelectorAll(".leaf")];
const book = document.querySelector(".leaves");

function open(at) {
  leaves.forEach((leaf, n) => { leaf.hidden = n !== at; });
  columns.forEach((column, n) => {
    if (n === at) column.setAttribute("aria-current", "true");
    else column.removeAttribute("aria-current");
  });
}

function turnTo(at, among) {
  if (at < 0 || at >= leaves.length) return;
  open(at);
  const goal = among === columns ? columns[at] : leaves[at];
  goal.focus({ preventScroll: true });
  goal.scrollIntoView({ block: "nearest", inline: "nearest" });
}

function place(address) {
  return address ? leaves.findIndex((leaf) => `#${leaf.id}` === address) : -1;
}

if (leaves.length) {
  document.documentElement.classList.add("leafing");
  const asked = place(location.hash);
  open(asked < 0 ? Number(book.dataset.first) : asked);

  document.addEventListener("click", (event) => {
    const link = event.target.closest("a[href^='#']");
    const at = link ? place(link.getAttribute("href")) : -1;
    if (at < 0) return;
    event.preventDefault();
    turnTo(at, leaves);
  });

  document.addEventListener("keydown", (event) => {
    if (event.altKey || event.ctrlKey || event.metaKey || event.shiftKey) return;
    const column = columns.indexOf(event.target.closest("a"));
    const leaf = leaves.indexOf(event.target.closest(".leaf"));
    const at = Math.max(column, leaf);
    if (at < 0) return;
    const goals = { ArrowLeft: at - 1, ArrowRight: at + 1, Home: 0, End: leaves.length - 1 };
    if (!Object.hasOwn(goals, event.key)) return;
    event.preventDefault();
    turnTo(goals[event.key], column < 0 ? leaves : columns);
  });
}
