
// One pane at a time or all of them, and the screen light or dark.
const panes = all('.pane');
const root = document.documentElement;
const oneAtATime = () => kept.view === 'one';
const paneOf = (name) => panes.find((pane) => pane.id === name) || panes[0];
let moved = 0; // when the last move was made: a glove that bounces moves once

const show = () => {
  const here = paneOf(kept.at);
  root.dataset.view = kept.view;
  root.dataset.at = here.dataset.step ? 'step' : here.id;
  panes.forEach((pane) => { pane.hidden = oneAtATime() && pane !== here; });
  all('[data-group]').forEach((group) => {
    group.hidden = oneAtATime() && !all('.pane', group).some((pane) => !pane.hidden);
  });
  all('.rail a').forEach((link) => {
    if (link.dataset.to === here.id) { link.setAttribute('aria-current', 'step'); } else { link.removeAttribute('aria-current'); }
  });
};

const go = (name) => {
  kept.at = paneOf(name).id;
  keep();
  draw();
  const pane = paneOf(name);
  id('says-' + (pane.dataset.step || pane.id)).focus({ preventScroll: true });
  if (oneAtATime()) { window.scrollTo(0, 0); } else { pane.scrollIntoView(); }
  const rail = all('.rail')[0], current = all('[aria-current]', rail)[0];
  if (current) { rail.scrollTop = current.offsetTop - rail.offsetTop - rail.clientHeight / 2; }
};

const move = (by) => {
  if (Date.now() - moved < 350) { return; }
  moved = Date.now();
  const at = panes.indexOf(paneOf(kept.at));
  if (oneAtATime()) {
    go(panes[Math.min(panes.length - 1, Math.max(0, at + by))].id);
  } else {
    const open = openSteps()[0];
    go(open ? 'step-' + open : 'after');
  }
};

const screens = { name: 'benchleaf / screen' };
const screen = (choice) => {
  if (choice) { root.dataset.screen = choice; } else { delete root.dataset.screen; }
};

all('[name=view]').forEach((choice) => choice.addEventListener('change', () => {
  kept.view = choice.value;
  keep();
  draw();
}));
all('[name=screen]').forEach((choice) => choice.addEventListener('change', () => {
  disk.set(screens.name, choice.value);
  screen(choice.value);
}));
document.addEventListener('click', (event) => {
  const link = event.target.closest && event.target.closest('a[href^="#"]');
  if (!link) { return; }
  const name = link.getAttribute('href').slice(1);
  if (name !== 'steps' || oneAtATime()) {
    event.preventDefault();
    go(name === 'steps' ? panes[Math.min(1, panes.length - 1)].id : name);
  }
});
id('back').addEventListener('click', () => move(-1));
drawn.push(show);
