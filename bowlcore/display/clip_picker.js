// Hands a file of this computer to Python in pieces, so that a large one fills neither the page nor a message.

const PIECE = 1 << 20;

function render({ model, el }) {
  const label = document.createElement('label');
  label.className = 'bm-clip-picker';
  label.append(`${model.get('label')} `);
  const input = document.createElement('input');
  input.type = 'file';
  input.accept = model.get('endings');
  const said = document.createElement('span');
  said.setAttribute('role', 'status');
  label.append(input);
  el.append(label, said);
  let file = null;

  input.addEventListener('change', () => {
    file = input.files[0];
    if (file) model.send({ do: 'begin', name: file.name, size: file.size });
  });

  async function answered(message) {
    if (message.do === 'more' && file) {
      const piece = await file.slice(message.from, message.from + PIECE).arrayBuffer();
      said.textContent = ` ${Math.round(100 * message.from / file.size)} % copied`;
      model.send({ do: 'piece', from: message.from }, undefined, [piece]);
    }
    if (message.do === 'end') {
      file = null;
      input.value = '';
      said.textContent = '';
    }
  }

  model.on('msg:custom', answered);
  return () => model.off('msg:custom', answered);
}

export default { render };
