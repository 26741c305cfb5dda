// Shows what is open at the computer, sends photographs to it one after another, and tells the fate of each.
"use strict";

const told = JSON.parse(document.getElementById("told").textContent);
const words = told.words;
const part = (id) => document.getElementById(id);
const verbs = document.querySelectorAll("[data-verb]");
// All in milliseconds.
const SILENCE = 25000; // the computer tells every ten seconds that all is well
const STALL = 30000; // without a byte on its way
const ANSWER = 150000; // until what was sent is answered
const PAUSE = [1000, 3000, 9000]; // before what broke off is sent again, each time while the computer is there

let view = null; // what the computer has open
let shownAtPress = null; // what was open when the camera or the list of pictures was asked for
let over = false; // no more is taken from this page
let heard = Date.now();
let sending = false;
let paused = false; // something broke off: what waits is sent when the computer is heard again
const waiting = [];
const rows = part("rows");

history.replaceState(null, "", "/"); // the code is of no use in the list of pages visited

function fill(text, values) {
  return text.replace(/\{(\w+)\}/g, (whole, name) => (name in values ? values[name] : whole));
}

function say(id, text) {
  part(id).textContent = text;
  part(id).hidden = !text;
}

// what is open

function show(now) {
  const before = view;
  view = now;
  heard = Date.now();
  say("state", "");
  part("open").hidden = part("foot").hidden = false;
  say("machine", now.machine);
  say("where", now.where);
  say("name", now.name);
  say("question", now.question);
  say("caution", now.caution);
  say("have", now.have);
  part("what").hidden = !now.photograph.length;
  part("shots").replaceChildren(...now.photograph.map((shot) => {
    const line = document.createElement("li");
    line.textContent = shot;
    return line;
  }));
  for (const key of verbs) {
    key.disabled = (key.dataset.verb === "back" && now.first) || (key.dataset.verb === "next" && now.last);
    if (key.hasAttribute("aria-pressed")) key.setAttribute("aria-pressed", String(key.dataset.verb === now.mark));
  }
  if (before && before.item !== now.item) {
    window.scrollTo(0, 0);
    say("moved", "");
  }
}

function close(words) {
  over = true;
  news.close();
  say("state", words);
  part("state").classList.add("over");
  part("foot").hidden = true;
  for (const id of ["camera", "several"]) part(id).disabled = true;
  for (const id of ["shoot", "choose"]) part(id).classList.add("off");
  resume();
}

function lost() {
  if (!over) say("state", words.lost);
}

let news = new EventSource("/news");

function listen() {
  news.addEventListener("now", (event) => show(JSON.parse(event.data)));
  news.addEventListener("well", () => { heard = Date.now(); });
  news.addEventListener("ended", () => close(words.ended));
  news.addEventListener("cut", () => close(words.cut));
  news.addEventListener("error", failed);
}

// The browser asks again by itself while a connection breaks off, but not once it was refused.
async function failed() {
  lost();
  if (news.readyState !== EventSource.CLOSED || over) return;
  const answer = await fetch("/", { headers: { Accept: "application/json" } }).catch(() => null);
  if (answer && (answer.status === 403 || answer.status === 410)) return close((await answer.json()).sentence);
  setTimeout(again, 2000);
}

function again() {
  if (over) return;
  news.close();
  news = new EventSource("/news");
  listen();
}

listen();
setInterval(() => {
  if (over || Date.now() - heard < SILENCE) return;
  heard = Date.now();
  lost();
  again();
}, 5000);

// photographs

for (const id of ["camera", "several"]) {
  part(id).addEventListener("click", () => { shownAtPress = view; });
  part(id).addEventListener("change", () => {
    const at = shownAtPress || view;
    if (at.item !== view.item) say("moved", fill(words.moved, { item: view.name, before: at.name }));
    for (const file of part(id).files) take(file, at);
    part(id).value = "";
  });
}

function take(file, at) {
  const row = part("row").content.firstElementChild.cloneNode(true);
  part("sent").hidden = false;
  rows.prepend(row);
  const name = file.name || words.shoot;
  row.querySelector(".file").textContent = name;
  row.querySelector(".for").textContent = fill(words.for, { item: at.name });
  const photograph = { file, at, row, name, broken: 0 };
  row.querySelector(".again").addEventListener("click", () => queue(photograph));
  queue(photograph);
}

function queue(photograph) {
  photograph.broken = 0;
  tell(photograph, "waiting", words.waiting, 0);
  waiting.push(photograph);
  sendNext();
}

function tell({ row }, state, text, percent) {
  row.className = row.dataset.fate = state;
  row.querySelector(".fate").textContent = text;
  const bar = row.querySelector("progress");
  bar.hidden = percent === undefined;
  if (percent !== undefined) bar.value = percent;
  row.querySelector(".again").hidden = state !== "unsent";
  count();
}

function count() {
  const all = rows.children.length;
  const kept = rows.querySelectorAll(".kept, .there").length;
  say("count", all > 1 ? fill(words.count, { kept, all }) : "");
}

async function sendNext() {
  if (sending || paused || !waiting.length) return;
  sending = true;
  const photograph = waiting.shift();
  try {
    await send(photograph);
  } finally {
    sending = false;
    sendNext();
  }
}

// Sending twice does no harm: what came in the first time is there already.
function brokeOff(photograph, most) {
  if (over || photograph.broken === PAUSE.length) {
    return tell(photograph, "unsent", words.unsent + ": " + fill(words.gone, most));
  }
  tell(photograph, "waiting", words.waiting, 0);
  waiting.unshift(photograph);
  paused = true;
  setTimeout(whenHeard, PAUSE[photograph.broken++]);
}

function whenHeard() {
  if (over || news.readyState === EventSource.OPEN) return resume();
  setTimeout(whenHeard, PAUSE[0]);
}

function resume() {
  paused = false;
  sendNext();
}

function refuse(photograph, sentence) {
  tell(photograph, "refused", words.refused + ": " + sentence);
}

async function send(photograph) {
  const { file, name } = photograph;
  const most = { name, most: told.megabytes };
  if (over) return refuse(photograph, words.ended);
  if (file.size > told.most) return refuse(photograph, fill(words.large, most));
  if (!file.size) return refuse(photograph, fill(words.none, most));
  const answer = await posted(photograph);
  if (!answer) return brokeOff(photograph, most);
  if ([429, 503, 504].includes(answer.status)) {
    return tell(photograph, "unsent", words.unsent + ": " + answer.sentence);
  }
  if (answer.outcome === "kept" || answer.outcome === "there") {
    const fate = words[answer.outcome];
    return tell(photograph, answer.outcome, answer.sentence ? fate + ". " + answer.sentence : fate);
  }
  return refuse(photograph, answer.sentence || words.unsent);
}

// An XMLHttpRequest, because only that tells how much has been sent.
function posted(photograph) {
  return new Promise((done) => {
    const { file, at, name } = photograph;
    const request = new XMLHttpRequest();
    const where = new URLSearchParams({ record: at.record, item: at.item });
    request.open("POST", "/photograph?" + where);
    request.setRequestHeader("Content-Type", "application/octet-stream");
    request.setRequestHeader("X-Name", encoded(name));
    let patience = setTimeout(() => request.abort(), STALL);
    const wait = (time) => {
      clearTimeout(patience);
      patience = setTimeout(() => request.abort(), time);
    };
    request.upload.onload = () => wait(ANSWER);
    request.onloadend = () => clearTimeout(patience);
    request.upload.onprogress = (event) => {
      wait(STALL);
      const percent = Math.floor((100 * event.loaded) / (event.total || file.size));
      tell(photograph, "sending", percent < 100 ? fill(words.sending, { percent }) : words.looking, percent);
    };
    request.onload = () => done({ ...read(request.responseText), status: request.status });
    request.onerror = request.onabort = request.ontimeout = () => done(null);
    request.send(file);
  });
}

// Half of a sign that needs two cannot be encoded.
function encoded(name) {
  return encodeURIComponent([...name].slice(-120).join("").replace(/[\uD800-\uDFFF]/gu, "\uFFFD"));
}

function read(text) {
  try {
    return JSON.parse(text);
  } catch {
    return {};
  }
}

// keys

for (const key of verbs) key.addEventListener("click", () => press(key.dataset.verb));

async function press(verb) {
  const body = JSON.stringify({ verb, record: view.record, item: view.item });
  const answer = await fetch("/press", { method: "POST", body }).catch(() => null);
  if (!answer) return lost();
  if (!answer.ok) say("moved", read(await answer.text()).sentence || "");
}
