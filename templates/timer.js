// The hold timer of a session: beeps at the start and the end of each hold and
// counts the last seconds of each rest. Without this file nothing is missing.
// Words and times stand in the page, as data of the panel and of the buttons.
(() => {
  "use strict";
  const panel = document.querySelector(".timer");
  if (!panel) return;
  const part = (name) => panel.querySelector("." + name), words = panel.dataset;
  const digits = part("digits"), phase = part("phase"), round = part("round"), bar = part("left");
  const hold = part("hold"), skip = part("further"), end = part("end");
  const READY = 8; // s to get into position (our judgement)
  let sound, lock, opener, plan = [], at = 0, until = 0, left = 0, paused = true, last = -1, clock = 0;

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

  // The whole exercise as a list of stretches: ready, hold, rest, hold …
  const stretches = ({ sets, hold, rest }) => {
    const list = [{ kind: "ready", set: 1, seconds: READY }];
    for (let set = 1; set <= sets; set++) {
      if (set > 1) list.push({ kind: "rest", set, seconds: Math.max(+rest, READY) });
      list.push({ kind: "hold", set, seconds: +hold });
    }
    return list;
  };

  const show = (seconds) => {
    digits.textContent = seconds;
    bar.value = plan[at] ? left / (plan[at].seconds * 1000) : 0;
  };

  const enter = (index) => {
    at = index;
    const now = plan[at], done = !now;
    panel.dataset.now = done ? "done" : now.kind;
    phase.textContent = words[done ? "done" : now.kind];
    round.textContent = done ? "" : words.round.replace("{number}", now.set).replace("{sets}", plan[plan.length - 1].set);
    hold.hidden = skip.hidden = done;
    if (done) {
      run(false);
      show(0);
      end.focus();
      return;
    }
    left = now.seconds * 1000;
    until = performance.now() + left;
    last = -1;
    if (now.kind === "hold") beep(880, 0.35);
    show(now.seconds);
  };

  const tick = () => {
    left = Math.max(0, until - performance.now());
    const seconds = Math.ceil(left / 1000);
    if (seconds !== last) {
      last = seconds;
      if (seconds > 0 && seconds <= 3 && plan[at].kind !== "hold") beep(587, 0.1);
    }
    show(seconds);
    if (left > 0) return;
    if (plan[at].kind === "hold") beep(440, 0.7);
    enter(at + 1);
  };

  const run = (going) => {
    paused = !going;
    clearInterval(clock);
    hold.textContent = paused ? words.go : words.pause;
    if (going) {
      until = performance.now() + left;
      clock = setInterval(tick, 100);
      navigator.wakeLock?.request("screen").then((l) => (paused ? l.release() : (lock = l)), () => {});
    } else {
      lock?.release();
      lock = null;
    }
  };

  const close = () => {
    run(false);
    panel.hidden = true;
    opener?.focus();
  };

  hold.onclick = () => run(paused);
  skip.onclick = () => enter(at + 1);
  end.onclick = close;
  addEventListener("keydown", (e) => {
    if (e.key === "Escape" && !panel.hidden) close();
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
      panel.hidden = false;
      enter(0);
      run(true);
      hold.focus();
    };
  }
})();
