// What is kept in the reader's own browser. Nothing is sent anywhere; a private window keeps nothing.
var NAME = "booklet/";

function kept(name) {
  try { return JSON.parse(localStorage.getItem(NAME + name)); } catch (error) { return null; }
}

function keep(name, value) {
  try { localStorage.setItem(NAME + name, JSON.stringify(value)); } catch (error) { /* It is shown all the same, until the page is left. */ }
}

function one(inside, what) { return inside.querySelector(what); }

function all(inside, what) { return [...inside.querySelectorAll(what)]; }

function on(what, event, act) { what.addEventListener(event, act); }

function isCalm() { return matchMedia("(prefers-reduced-motion: reduce)").matches; }

function made(what) { return document.createElement(what); }

function button(label, act) {
  var press = made("button");
  press.type = "button";
  press.append(...label);
  on(press, "click", act);
  return press;
}

// Calls act(name, element) for every element inside that has data-do, when it is pressed or changed.
function wire(inside, act) {
  on(inside, "click", event => {
    var button = event.target.closest("button[data-do]");
    if (button && inside.contains(button)) { act(button.dataset.do, button); }
  });
  on(inside, "change", event => {
    if (event.target.dataset.do) { act(event.target.dataset.do, event.target); }
  });
}
