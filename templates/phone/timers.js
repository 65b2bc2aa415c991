
// Timers count down to nothing and then how far they are over. They go by the clock, so
// that a page that slept is right when it wakes.
const timers = all('[data-timer]');
const secondsOf = (timer) => Number(timer.dataset.seconds);

const left = (timer) => {
  const state = kept.timers[timer.dataset.timer];
  if (!state) { return secondsOf(timer); }
  return state.ends ? (state.ends - Date.now()) / 1000 : state.rest;
};

const running = (timer) => Boolean((kept.timers[timer.dataset.timer] || {}).ends);

const clock = (seconds) => {
  const whole = Math.max(0, Math.ceil(seconds));
  const two = (n) => String(n).padStart(2, '0');
  const hours = Math.floor(whole / 3600), minutes = Math.floor(whole / 60) % 60;
  return hours ? hours + ':' + two(minutes) + ':' + two(whole % 60) : minutes + ':' + two(whole % 60);
};

const put = (place, text) => {
  if (place.textContent !== text) { place.textContent = text; }
};

const count = () => {
  let next = null, over = null;
  timers.forEach((timer) => {
    const n = timer.dataset.timer;
    const rest = left(timer);
    const is = rest <= 0 ? 'over' : running(timer) ? 'running' : kept.timers[n] ? 'paused' : 'ready';
    timer.dataset.is = is;
    put(all('.clock', timer)[0], is === 'over' ? said(words.OverBy, { time: clock(Math.floor(-rest)) }) : clock(rest));
    put(all('.over', timer)[0], is === 'over' ? words.TimeOver + '.' : '');
    put(all('.run', timer)[0], { ready: words.StartTimer, running: words.Pause, paused: words.GoOn, over: words.Pause }[is]);
    all('.run', timer)[0].hidden = is === 'over';
    all('.zero', timer)[0].hidden = is === 'ready';
    if (is === 'over' && !kept.timers[n].told) {
      kept.timers[n].told = true;
      keep();
      if (navigator.vibrate) { navigator.vibrate([400, 200, 400, 200, 800]); }
    }
    if (is === 'running' && (!next || rest < left(next))) { next = timer; }
    if (is === 'over' && !ticked(Number(n)) && !over) { over = timer; }
  });
  const link = id('running');
  link.hidden = !next || stepHere() === Number(next.dataset.timer);
  if (next) {
    link.setAttribute('href', '#step-' + next.dataset.timer);
    put(link, said(words.Timer, { n: next.dataset.timer }) + ': ' + clock(left(next)));
  }
  const elsewhere = over && !(oneAtATime() && stepHere() === Number(over.dataset.timer));
  const told = elsewhere ? said(words.Timer, { n: over.dataset.timer }) + ': ' + words.TimeOver + '.' : '';
  if (id('alarm').textContent !== told) {
    const to = document.createElement('a');
    to.textContent = told;
    to.setAttribute('href', '#step-' + (elsewhere ? over.dataset.timer : ''));
    id('alarm').replaceChildren(...(told ? [to] : []));
  }
};

timers.forEach((timer) => {
  const n = timer.dataset.timer;
  all('.run', timer)[0].addEventListener('click', () => {
    kept.timers[n] = running(timer) ? { rest: left(timer) } : { ends: Date.now() + left(timer) * 1000 };
    keep();
    count();
  });
  all('.zero', timer)[0].addEventListener('click', () => {
    delete kept.timers[n];
    keep();
    count();
    all('.run', timer)[0].focus();
  });
  timer.hidden = false;
});
setInterval(count, 250);
drawn.push(count);
