"use strict";
(() => {
  const sheet = document.getElementById("sums");
  if (!sheet) return;
  sheet.hidden = false;
  const at = (id) => document.getElementById(id);
  const told = at("told");
  const deg = 180 / Math.PI;
  const unit = sheet.dataset.unit;
  const scale = Number(sheet.dataset.scale);
  const fixed = (x, fine) => x.toFixed(Number(x.toFixed(fine)) < 10 ? fine : 0);
  const span = (low, high, fine, word) => {
    const a = fixed(low, fine), b = fixed(high, fine);
    if (Number(b) === 0) return `less than ${10 ** -fine} ${word}`;
    return a === b ? `${a} ${word}` : `${a} to ${b} ${word}`;
  };
  const long = (low, high) => span(low / scale, high / scale, unit === "in" ? 2 : 1, unit);
  const turned = (low, high) => span(low * deg, high * deg, 1, "deg");

  // A number as people type it: "12", "12,5", "1 1/2", "3/4"; nothing where it is none.
  const read = (text) => {
    const plain = text.trim().replace(",", ".");
    if (plain === "") return null;
    const found = /^(?:(\d+(?:\.\d*)?|\.\d+)|(?:(\d+)\s+)?(\d+)\/([1-9]\d*))$/.exec(plain);
    if (!found) return NaN;
    return found[1] !== undefined ? Number(found[1]) : Number(found[2] || 0) + found[3] / found[4];
  };

  // The same formulas as in the program: a kink in the middle, and an even bow.
  const explained = (rod, seen, length, low, high) => {
    const straight = rod.straight === "yes";
    const short = straight
      ? [seen, seen]
      : [length - Math.sqrt(length * length - 4 * seen * seen), (8 * seen * seen) / (3 * length)];
    const turn = [Math.asin(short[0] / rod.leverHigh), Math.asin(short[1] / rod.leverLow)];
    const share = Number(rod.share);
    return { short, turn, wheel: [share * turn[0] * low, share * turn[1] * high] };
  };

  const say = (lines) => {
    told.replaceChildren(...lines.map((line) => {
      const one = document.createElement("p");
      one.textContent = line;
      return one;
    }));
  };

  const choose = () => {
    const rod = at("rod").selectedOptions[0].dataset;
    at("length").value = rod.straight === "yes" ? "" : (rod.length / scale).toFixed(unit === "in" ? 1 : 0);
    at("length-row").hidden = rod.straight === "yes";
    at("how").textContent = rod.measure;
    reckon();
  };

  const reckon = () => {
    const option = at("rod").selectedOptions[0];
    const rod = option.dataset;
    const straight = rod.straight === "yes";
    const bow = read(at("bow").value);
    const length = straight ? 1 : read(at("length").value);
    const felt = read(at("felt").value);
    const ratio = read(at("ratio").value);
    delete told.dataset.low;
    delete told.dataset.high;
    if (bow === null) return say(["Write what you measured; the answer stands here."]);
    if (![bow, length, felt ?? 0, ratio ?? 1].every(Number.isFinite) || length === null) {
      return say(["One of these is not a number. Write it in figures, without its unit."]);
    }
    if (ratio !== null && (ratio < 5 || ratio > 40)) {
      return say([`A ratio of ${ratio} to 1 is outside what steering boxes have (5 to 40): count again, or leave it empty.`]);
    }
    if (felt !== null && felt > 720) return say(["More than two turns off centre: something has parted. STOP."]);
    if (!straight && length * scale < 0.2) return say(["A rod shorter than a hand is not meant: write its length eye to eye."]);
    if (!straight && bow > length / 5) {
      return say(["A bow of more than a fifth of its length: this rod has folded. STOP; no sum is needed."]);
    }
    const low = ratio ?? Number(sheet.dataset.ratioLow), high = ratio ?? Number(sheet.dataset.ratioHigh);
    const got = explained(rod, bow * scale, length * scale, low, high);
    if (![...got.turn, ...got.wheel].every(Number.isFinite)) {
      return say(["So far no lever of this axle reaches: measure again. If it is so, STOP."]);
    }
    told.dataset.low = got.wheel[0];
    told.dataset.high = got.wheel[1];
    const lines = [straight
      ? `You said: one wheel ${bow} ${unit} further back.`
      : `You said: ${option.text}, ${length} ${unit} eye to eye, bowed ${bow} ${unit}` +
        (felt === null ? "." : `; steering wheel ${felt} deg off centre.`)];
    if (!straight) lines.push(`It is shorter by ${long(...got.short)}: ${rod.effect}.`);
    else lines.push(`So ${rod.effect}, by ${turned(...got.turn)}.`);
    if (rod.share !== "1") {
      const over = Number(sheet.dataset.diameter);
      const toe = got.turn.map((turn) => 2 * over * Math.sin(turn / 2));
      lines.push(`Toe changes by ${turned(...got.turn)}, which is ${long(...toe)} at this tread.`);
    }
    lines.push(`It turns the steering wheel off centre by ${turned(...got.wheel)}.`);
    if (bow === 0 && felt !== null) {
      lines.length = 0;
      if (felt / deg <= Number(sheet.dataset.reading)) return say(["Nothing seen and nothing felt: the sum has nothing to say. The looks stand."]);
      lines.push(`You said: nothing bowed; steering wheel ${felt} deg off centre.`);
    }
    if (felt !== null) {
      const off = felt / deg, near = Number(sheet.dataset.reading);
      // The guard stands on the rejecting side: a bow never explains everything for certain.
      const left = [off - near - got.wheel[1], off + near - got.wheel[0]];
      if (left[0] > 0) {
        lines.push(`What is seen does not explain what is felt: ${span(left[0] * deg, left[1] * deg, 0, "deg")} of ${felt} deg come from something else. Fix before trip: look below, from the top.`);
      } else if (left[1] < 0) {
        lines.push("What is seen should turn the wheel further than is felt: measure the bow again. Two faults may hide each other: look below all the same.");
      } else {
        lines.push(`What is seen may explain it all, or leave up to ${fixed(left[1] * deg, 0)} deg to something else. Cannot tell means fix before trip: look below, from the top.`);
      }
    }
    if (bow === 0 && felt !== null) return say(lines);
    lines.push(straight ? "An axle that has moved: fix before trip." : "A bowed rod is changed, never straightened: fix before trip.");
    return say(lines);
  };

  at("rod").addEventListener("change", choose);
  for (const id of ["bow", "length", "felt", "ratio"]) at(id).addEventListener("input", reckon);
  choose();

  // What is written on the lines stays on this phone, where it lets a file keep anything.
  const lines = [...document.querySelectorAll("input[data-keep]")];
  const note = at("kept");
  try {
    const place = `axlewright-take-${sheet.dataset.name}-`;
    localStorage.setItem(`${place}probe`, "1");
    for (const line of lines) {
      line.value = localStorage.getItem(place + line.id) ?? "";
      line.addEventListener("input", () => localStorage.setItem(place + line.id, line.value));
    }
    note.textContent = "What you write on the lines of this file is kept on this phone only.";
  } catch {
    note.textContent = "This phone keeps nothing that is written in a file: write it on paper.";
  }
})();
