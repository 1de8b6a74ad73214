// One frame of a clip, and what was clicked on it. Python sends the picture and `view`; this says where it is
// clicked, in pixels of the clip, together with the number of the frame that was really on the screen.
// Keys: arrows move the cross (with Shift further), Enter clicks there, Page Up and Page Down step, Backspace undoes.

const SVG = 'http://www.w3.org/2000/svg';
const ARROWS = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] };

function shape(parent, kind, attributes) {
  // twice, wide and dark under narrow and light: seen on any picture
  for (const look of ['bm-clip-under', 'bm-clip-over']) {
    const made = document.createElementNS(SVG, kind);
    for (const [name, value] of Object.entries(attributes)) made.setAttribute(name, value);
    made.classList.add(look);
    parent.append(made);
  }
}

function plus(parent, x, y, arm, gap = 0) {
  const lines = gap
    ? `M${x - arm} ${y}H${x - gap}M${x + gap} ${y}H${x + arm}M${x} ${y - arm}V${y - gap}M${x} ${y + gap}V${y + arm}`
    : `M${x - arm} ${y}H${x + arm}M${x} ${y - arm}V${y + arm}`;
  shape(parent, 'path', { d: lines });
}

function render({ model, el }) {
  const box = document.createElement('div');
  box.className = 'bm-clip';
  box.tabIndex = 0;
  box.setAttribute('role', 'application');
  box.setAttribute('data-lm-suppress-shortcuts', 'true');  // the lab must not take Enter and the arrows
  const image = document.createElement('img');
  image.alt = '';
  image.draggable = false;
  const drawn = document.createElementNS(SVG, 'svg');
  drawn.setAttribute('aria-hidden', 'true');
  drawn.setAttribute('preserveAspectRatio', 'none');
  const said = document.createElement('div');
  said.className = 'bm-clip-said';
  said.setAttribute('aria-live', 'polite');
  box.append(image, drawn);
  el.append(box, said);

  let view = null, bytes = null, address = '', cross = null, newest = 0;

  async function refresh() {
    const wanted = model.get('view'), picture = model.get('picture'), turn = ++newest;
    if (!wanted.width) return;
    if (picture !== bytes) {
      const fresh = URL.createObjectURL(new Blob([picture], { type: 'image/jpeg' }));
      const ahead = new Image();
      ahead.src = fresh;
      await ahead.decode().catch(() => {});
      if (turn !== newest) { URL.revokeObjectURL(fresh); return; }
      image.src = fresh;
      URL.revokeObjectURL(address);
      [bytes, address] = [picture, fresh];
    }
    view = wanted;
    cross = view.cross;
    draw();
  }

  function draw() {
    const { left, top, width, height, frame } = view;
    box.dataset.frame = frame;
    box.style.width = `min(100% - 8px, 820px, ${(68 * width / height).toFixed(1)}vh)`;
    box.style.aspectRatio = `${width} / ${height}`;
    box.setAttribute('aria-label', view.label);
    drawn.setAttribute('viewBox', `${left - 0.5} ${top - 0.5} ${width} ${height}`);
    drawn.replaceChildren();
    const small = width / 60;
    for (const mark of view.marks) {
      if (mark.kind === 'outline') shape(drawn, 'circle', { cx: mark.x, cy: mark.y, r: mark.r, 'stroke-dasharray': '6 5' });
      if (mark.kind === 'rim') shape(drawn, 'circle', { cx: mark.x, cy: mark.y, r: small / 3 });
      if (mark.kind === 'tape') plus(drawn, mark.x, mark.y, small);
    }
    const only = document.createElementNS(SVG, 'g');
    only.classList.add('bm-clip-cross');
    plus(only, cross[0], cross[1], 2.5 * small, 0.4 * small);
    drawn.append(only);
  }

  function send(what, more = {}) {
    if (view) model.send({ do: what, frame: view.frame, ...more });
  }

  function click(x, y) {
    cross = [x, y];
    send('click', { x, y });
  }

  box.addEventListener('click', event => {
    if (!view) return;
    box.classList.remove('bm-clip-keyed');
    const at = image.getBoundingClientRect();
    click(view.left - 0.5 + (event.clientX - at.left) / at.width * view.width,
          view.top - 0.5 + (event.clientY - at.top) / at.height * view.height);
  });

  box.addEventListener('keydown', event => {
    if (!view || event.ctrlKey || event.metaKey || event.altKey) return;
    const { left, top, width, height } = view;
    const way = ARROWS[event.key];
    if (way) {
      const step = event.shiftKey ? Math.max(5, Math.round(width / 25)) : Math.max(1, Math.round(width / 400));
      cross = [Math.min(Math.max(Math.round(cross[0]) + way[0] * step, left), left + width - 1),
               Math.min(Math.max(Math.round(cross[1]) + way[1] * step, top), top + height - 1)];
      box.classList.add('bm-clip-keyed');
      said.textContent = `Cross: ${cross[0]} across, ${cross[1]} down`;
      draw();
      send('cross', { x: cross[0], y: cross[1] });
    } else if (event.key === 'Enter') click(...cross);
    else if (event.key === 'PageDown') send('step', { by: 1 });
    else if (event.key === 'PageUp') send('step', { by: -1 });
    else if (event.key === 'Backspace') send('undo');
    else return;
    event.preventDefault();
    event.stopPropagation();
  });

  model.on('change:view', refresh);
  model.on('change:picture', refresh);
  refresh();
  return () => {
    model.off('change:view', refresh);
    model.off('change:picture', refresh);
    URL.revokeObjectURL(address);
  };
}

export default { render };
