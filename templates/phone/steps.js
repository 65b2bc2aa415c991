
// Steps are done, left out or open.
const numbers = all('.step').map((pane) => Number(pane.dataset.step));
const ticked = (n) => id('done-' + n).checked;
const leftOut = (n) => id('left-' + n).checked;
const openSteps = () => numbers.filter((n) => !ticked(n) && !leftOut(n));
const stepHere = () => Number(paneOf(kept.at).dataset.step || 0);

const tick = (field, on) => {
  if (field.checked !== on) {
    field.checked = on;
    note(field);
  }
};

document.addEventListener('input', (event) => {
  const [what, n] = (event.target.id || '').split('-');
  if (event.target.checked && (what === 'done' || what === 'left')) {
    tick(id((what === 'done' ? 'left-' : 'done-') + n), false);
    draw();
  }
});

id('on').addEventListener('click', () => {
  const n = stepHere();
  if (n && oneAtATime() && Date.now() - moved >= 350 && !leftOut(n)) { tick(id('done-' + n), true); }
  move(1);
});

drawn.push(() => {
  numbers.forEach((n) => {
    const pane = id('step-' + n);
    const outside = all('.verdict.outside', pane).length > 0;
    pane.classList.toggle('done', ticked(n));
    pane.classList.toggle('left', leftOut(n));
    all('.why', pane)[0].hidden = !leftOut(n);
    all('.rail [data-to=step-' + n + ']').forEach((link) => {
      link.classList.toggle('done', ticked(n));
      link.classList.toggle('left', leftOut(n));
      link.classList.toggle('outside', outside);
    });
  });
  const done = numbers.filter(ticked).length;
  const n = stepHere();
  const ready = said(words.DoneOf, { n: done, all: numbers.length });
  id('where').textContent = n && oneAtATime() ? said(words.StepOf, { n: n, all: numbers.length }) : ready;
  id('meter').style.width = (numbers.length ? 100 * done / numbers.length : 0) + '%';
  const begins = kept.at === 'before' && oneAtATime();
  const ends = kept.at === 'after' && oneAtATime();
  id('on').textContent = begins ? words.Begin : n && oneAtATime() && !ticked(n) && !leftOut(n) ? words.DoneNext : words.Next;
  id('on').disabled = ends;
  id('back').disabled = begins || !oneAtATime();
});
