// The hold timer: beeps at the start and the end of each hold and counts the last
// seconds of each rest. A test and a check hold count up, until they are enough or
// somebody taps. What was held is told to the exercise, in an event "held". Without
// this file nothing is missing.
// Words and times stand in the page, as data of the dialog and of the buttons.
(() => {
  "use strict";
  const panel = document.querySelector("dialog.timer");
  if (!panel || !panel.showModal) return;
  const part = (name) => panel.querySelector("." + name), words = panel.dataset;
  const digits = part("digits"), phase = part("phase"), round = part("round"), bar = part("left");
  const hold = part("hold"), skip = part("further"), end = part("end");
  const READY = 8; // s to get into position (our judgement)
  const MARK = 5; // s between the beeps of a hold that counts up
  let sound, lock, opener, plan = [], held = [], at = 0, from = 0, passed = 0, paused = true, last = -1, clock = 0;

  // One beep: hertz, seconds.
  const beep = (pitch, length) => {
    if (!sound) return;
    const tone = sound.createOscillator(), volume = sound.createGain(), now = sound.currentTime;
    tone.frequency.value = pitch;
    volume.gain.setValueAtTime(0.3, now);
    volume.gain.setValueAtTime(0.3, now + length);
    volume.gain.linearRampToValueAtTime(0, now + length + 0.03);
    tone.connect(volume).connect(sound.destination);
    tone.start(now);
    tone.stop(now + length + 0.05);
  };

  // The whole exercise as a list of stretches: ready, hold, rest, hold … Of a hold
  // that counts up, no seconds mean until somebody taps.
  const stretches = ({ sets, hold, rest, up }) => {
    const list = [{ kind: "ready", set: 1, seconds: READY }];
    for (let set = 1; set <= sets; set++) {
      if (set > 1) list.push({ kind: "rest", set, seconds: Math.max(+rest, READY) });
      list.push({ kind: "hold", set, seconds: +hold, up: up !== undefined });
    }
    return list;
  };

  // A stretch of a minute or more is counted in minutes and seconds to its end.
  const show = (seconds, long) => {
    const text = long ? Math.floor(seconds / 60) + ":" + String(seconds % 60).padStart(2, "0") : String(seconds);
    if (digits.textContent !== text) digits.textContent = text;
    panel.dataset.letters = text.length;
  };

  const enter = (index) => {
    at = index;
    const now = plan[at], done = !now;
    panel.dataset.now = done ? "done" : now.kind;
    phase.textContent = words[done ? "done" : now.kind];
    const set = done ? "" : words.round.replace("{number}", now.set).replace("{sets}", plan[plan.length - 1].set);
    const result = held.length && (done || now.kind === "rest") ? words.held.replace("{number}", (done ? held : held.slice(-1)).join(", ")) : "";
    round.textContent = [result, set].filter(Boolean).join(" · ");
    hold.hidden = skip.hidden = done;
    if (done) {
      run(false);
      end.focus();
      return;
    }
    passed = 0;
    from = performance.now();
    last = -1;
    if (now.kind === "hold") beep(880, 0.35);
    label();
    tell(0);
  };

  const label = () => {
    const now = plan[at];
    hold.textContent = paused ? words.go : now?.up ? words.down : words.pause;
    skip.textContent = now?.kind === "hold" && !now.up ? words.down : words.skip; // down too early is a result as well
  };

  // What the dialog shows after so many milliseconds of a stretch.
  const tell = (ms) => {
    const now = plan[at], length = now.seconds * 1000;
    const seconds = now.up ? Math.floor(ms / 1000) : Math.ceil((length - ms) / 1000);
    show(seconds, (now.up ? seconds : now.seconds) >= 60);
    bar.value = length ? Math.max(0, 1 - ms / length) : 1;
    if (seconds === last) return;
    last = seconds;
    if (now.up ? seconds > 0 && seconds % MARK === 0 : now.kind !== "hold" && seconds > 0 && seconds <= 3) beep(587, 0.1);
  };

  const tick = () => {
    passed = performance.now() - from;
    const now = plan[at];
    if (now.seconds && passed >= now.seconds * 1000) leave(now.seconds);
    else tell(passed);
  };

  // The end of a stretch, in a hold after so many seconds.
  const leave = (seconds) => {
    const now = plan[at];
    if (now.kind === "hold") {
      beep(440, 0.7);
      const row = opener.closest("li, tr"), tick = row.querySelectorAll('.ticks [type="checkbox"]')[now.set - 1];
      if (tick) tick.checked = true;
      if (now.up) held.push(seconds);
      if (seconds > 0) row.dispatchEvent(new CustomEvent("held", { detail: { set: now.set, seconds } }));
    }
    enter(at + 1);
  };

  const awake = () => navigator.wakeLock?.request("screen").then((l) => (paused ? l.release() : (lock = l)), () => {});

  const run = (going) => {
    paused = !going;
    clearInterval(clock);
    label();
    if (going) {
      from = performance.now() - passed;
      clock = setInterval(tick, 100);
      awake();
    } else {
      lock?.release();
      lock = null;
    }
  };

  hold.onclick = () => {
    if (!paused && plan[at].up) leave(Math.floor((performance.now() - from) / 1000));
    else run(paused);
  };
  skip.onclick = () => {
    if (plan[at].kind === "hold" && !plan[at].up && passed >= 1000) leave(Math.floor(passed / 1000));
    else enter(at + 1);
  };
  end.onclick = () => panel.close();
  panel.onclose = () => {
    run(false);
    opener?.focus();
  };
  // A screen that was put away lets go of the lock.
  document.addEventListener("visibilitychange", () => {
    if (!document.hidden && !paused) awake();
  });

  for (const button of document.querySelectorAll("button.go")) {
    button.hidden = false;
    button.onclick = () => {
      const Sound = window.AudioContext || window.webkitAudioContext;
      sound = sound || (Sound && new Sound());
      sound?.resume?.();
      opener = button;
      part("name").textContent = button.dataset.name;
      plan = stretches(button.dataset);
      held = [];
      panel.showModal();
      enter(0);
      run(true);
      hold.focus();
    };
  }
})();
