// Hands the notebook's lines over: to the share sheet of the phone, to a mail, to the
// clipboard. Nothing leaves the phone but by a tap here, and a session that is sent
// twice counts once. Without this file nothing can be sent.
(() => {
  "use strict";
  const box = document.querySelector(".send");
  if (!box || !window.notebook) return;
  const part = (name) => box.querySelector(name), words = box.dataset;
  const share = part(".share"), mail = part(".mail"), copy = part(".copy"), state = part(".state");
  const header = "date,exercise,set,bands,hold_s,reps,rpe,clean,pain,ahead,note,client";
  const MOST = 1800; // letters of a mail's address that every program takes (our judgement)
  const text = (list) => [header, ...list.flatMap((d) => d.entry.lines), ""].join("\n");
  const subject = encodeURIComponent(words.subject);
  const address = (list) => `mailto:${words.contact}?subject=${subject}&body=${encodeURIComponent(text(list).replaceAll("\n", "\r\n"))}`;

  // A mail takes the oldest days that have room, at least one; the others wait.
  const fitting = (list) => {
    let n = list.length;
    while (n > 1 && address(list.slice(0, n)).length > MOST) n--;
    return list.slice(0, n);
  };

  const show = (said) => {
    const list = notebook.unsent();
    share.hidden = !navigator.share;
    share.disabled = copy.disabled = !list.length;
    if (list.length) mail.href = address(fitting(list));
    else mail.removeAttribute("href");
    state.textContent = said || (notebook.all().length ? (list.length ? words.waiting.replace("{count}", list.length) : words.sent) : "");
    part(".lines").value = list.length ? text(list) : "";
    part(".lines").closest("details").hidden = !list.length;
  };
  const done = (list, said) => {
    notebook.mark(list);
    show(said);
  };

  share.onclick = async () => {
    const list = notebook.unsent();
    try {
      await navigator.share({ title: words.subject, text: text(list) });
      done(list);
    } catch (e) {
      if (e.name !== "AbortError") show(words.failed); // whoever turns back knows it
    }
  };
  mail.onclick = () => {
    const list = fitting(notebook.unsent());
    if (list.length) setTimeout(() => done(list));
  };
  copy.onclick = async () => {
    const list = notebook.unsent();
    try {
      await navigator.clipboard.writeText(text(list));
      done(list, words.copied);
    } catch {
      part("details").open = true;
      part(".lines").select();
      show(words.byhand);
    }
  };
  document.addEventListener("notebook", ({ detail }) => show(detail.kept ? "" : words.refused));
  show();
})();
