// Requests to the desk, and small things that every part needs.

export const id = (name) => document.getElementById(name);

// make builds an element: attributes that are false or null are left out.
export const make = (tag, attributes, ...children) => {
  const out = document.createElement(tag);
  for (const [name, value] of Object.entries(attributes || {})) {
    if (value === false || value === null || value === undefined) { continue; }
    if (name.startsWith('on')) { out.addEventListener(name.slice(2), value); } else { out.setAttribute(name, value === true ? '' : value); }
  }
  out.append(...children.filter((child) => child !== null && child !== undefined));
  return out;
};

export class Refused extends Error {
  constructor(status, body) {
    super(body.error || 'The desk refused this.');
    this.status = status;
    this.body = body;
  }
}

export class Lost extends Error {}

const sent = async (name, options) => {
  let answer;
  try {
    answer = await fetch('api/' + name, { credentials: 'same-origin', ...options });
  } catch (wrong) {
    if (wrong.name === 'AbortError') { throw wrong; }
    throw new Lost('The desk does not answer.');
  }
  const json = (answer.headers.get('Content-Type') || '').startsWith('application/json');
  if (!answer.ok) { throw new Refused(answer.status, json ? await answer.json() : { error: await answer.text() }); }
  return json ? answer.json() : answer;
};

export const get = (name) => sent(name, {});

export const ask = (name, body, signal) => sent(name, { method: 'POST', headers: { 'Content-Type': 'application/json' }, body: JSON.stringify(body), signal });

// newest runs one request at a time of its kind: a newer one gives the older one up.
export const newest = () => {
  let running = null;
  return async (name, body) => {
    if (running) { running.abort(); }
    const mine = running = new AbortController();
    try {
      return await ask(name, body, mine.signal);
    } catch (wrong) {
      if (wrong.name === 'AbortError') { return null; }
      throw wrong;
    } finally {
      if (running === mine) { running = null; }
    }
  };
};

export const plural = (n, one, more) => n + ' ' + (n === 1 ? one : more);
