// Turns what stands in a session's boxes into lines of a log, in its own columns:
// date,exercise,set,bands,hold_s,reps,rpe,clean,pain,ahead,note,client. Every line has
// all of its cells and ends with whose it is, so that one that was cut is seen to be.
window.logLines = (() => {
  "use strict";
  const find = (root, part) => root.querySelector(`[data-part="${part}"]`);
  const check = (field, good) => (good ? field?.removeAttribute("aria-invalid") : field?.setAttribute("aria-invalid", "true"));
  const text = (field) => (field ? field.value.trim().replace(",", ".") : "");

  // A number as people write it; where it is none, the box says so and it is left out.
  const number = (field, least, most, whole) => {
    const said = text(field), good = (whole ? /^\d{1,3}$/ : /^\d{1,3}(\.\d)?$/).test(said) && +said >= least && +said <= most;
    check(field, !said || good);
    return good ? String(+said) : "";
  };
  const distance = (field) => {
    const said = text(field), found = /^(\d{1,2}(\.\d)?)( ?cm)?$/.exec(said), good = found && +found[1] >= 1 && +found[1] <= 60;
    check(field, !said || good);
    return good ? +found[1] + " cm" : "";
  };

  // How many tries reached, and the best of them, which has to agree.
  const tried = (li, row) => {
    const { tries, amount } = li.dataset, reached = number(find(li, "reached"), 0, +tries, true);
    const best = number(find(li, "best"), 0, 300), agree = !best || !reached || +reached > 0 === +best >= +amount;
    if (!agree) check(find(li, "best"), false);
    return { ...row, told: !!reached, complete: !!reached, tries: `${reached} of ${tries}`, best: agree ? best : "", amounts: [""] };
  };

  // The last good mark of those that were tried.
  const found = (li, row, mark) => {
    const { bands = "", lean = "" } = mark.selectedOptions[0].dataset, told = mark.value !== "";
    return { ...row, told, complete: told, bands, help: bands, own: lean, amounts: [li.dataset.amount] };
  };

  const sets = (li, row) => {
    const { amount, lean } = li.dataset, own = lean ? distance(find(li, "lean")) : "";
    const came = [...li.querySelectorAll(".came")].map((f) => number(f, 0, row.reps ? 200 : 300, row.reps)), complete = came.every(Boolean);
    const amounts = came.map((x) => x || "-").slice(0, came.findLastIndex(Boolean) + 1);
    return { ...row, complete, amounts, told: amounts.length > 0, own: own === lean ? "" : own, same: complete && amount !== "0" && came.every((x) => x === amount) };
  };

  // What an item came to.
  const told = (li) => {
    const { exercise, bands = "", reps, main, tries } = li.dataset, mark = find(li, "mark");
    const plain = { exercise, bands, own: "", main: main !== undefined, reps: reps !== undefined };
    const row = tries !== undefined ? tried(li, plain) : mark ? found(li, plain, mark) : sets(li, plain);
    const rpe = number(find(li, "rpe"), 1, 10), clean = find(li, "clean")?.value || "", last = row.amounts.length - 1;
    row.printed = row.same && !rpe && !clean && !row.own;
    row.rpe = row.amounts.map((_, i) => (i === last ? rpe : ""));
    row.clean = row.amounts.map((_, i) => (clean === "yes" || i === last ? clean : ""));
    return row;
  };

  // Sets of one exercise follow each other where nothing tells them apart.
  const merged = (rows) => {
    const out = [];
    for (const row of rows) {
      const before = !row.tries && out.find((o) => !o.tries && o.exercise === row.exercise && o.bands === row.bands && o.own === row.own);
      if (!before) out.push({ ...row });
      else for (const part of ["amounts", "rpe", "clean"]) before[part] = [...before[part], ...row[part]];
    }
    return out;
  };

  // One value is the last set's, yes is every set's; else there is one a set.
  const cell = (values) => {
    if (values.every((v) => v === "yes")) return "yes";
    return values.slice(0, -1).some(Boolean) ? values.map((v) => v || "-").join(" ") : values[values.length - 1];
  };
  const quoted = (s) => (/[",;]/.test(s) ? '"' + s.replaceAll('"', '""') + '"' : s);
  const pain = (root, when) => {
    const said = [...root.querySelectorAll(`[data-part^="${when}-"]`)].map((f) => [f.dataset.joint, number(f, 0, 10, true)]).filter(([, n]) => n);
    return said.length === 3 && said.every(([, n]) => n === "0") ? "0" : said.map((j) => j.join(" ")).join(" ");
  };
  const after = (date) => new Date(Date.parse(date) + 864e5).toISOString().slice(0, 10);

  // done is a session as printed; lines of the same day stand in place of what was
  // printed of their exercise. Where something was left out, every line stands for itself.
  return (items, box, client, on) => {
    const line = (date, exercise, r) => [date, exercise, r.set, r.bands, r.hold, r.reps, r.rpe, r.clean, r.pain, r.ahead, r.note, client].map((c) => quoted(c || "")).join(",");
    const all = items.map(told), whole = all.length > 0 && all.every((r) => r.complete);
    const rows = merged(all.filter((r) => r.told && !(whole && r.printed)));
    const day = { pain: pain(document, "before"), note: find(box, "note").value.trim().replace(/["“”„«»]/g, "'") }; // a mail changes such quotes
    const bearer = whole ? null : rows.find((r) => r.main) || rows[0];
    const bands = (r) => r.help || (all.some((o) => o.exercise === r.exercise && o.bands !== r.bands) ? r.bands : "");
    const out = rows.map((r) => line(on, r.exercise, {
      set: r.amounts.length === 1 && !r.tries ? "1" : "", bands: bands(r), ahead: r.own, rpe: cell(r.rpe), clean: cell(r.clean),
      hold: r.tries ? r.best : r.reps ? "" : r.amounts.join(" "), reps: r.tries || (r.reps ? r.amounts.join(" ") : ""),
      ...(r === bearer ? day : {}),
    }));
    if (whole) out.push(line(on, "done", day));
    else if (!bearer && day.pain) out.push(line(on, "morning", day));
    const next = pain(document, "next");
    return next ? [...out, line(after(on), "morning", { pain: next })] : out;
  };
})();
