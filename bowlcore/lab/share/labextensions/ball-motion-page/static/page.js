// A notebook whose metadata says {"bowlcore": {"run_on_open": true}} is a lesson: it runs when it opens,
// and reads like a page. Other notebooks stay as they are.
// Written by hand in the form in which JupyterLab loads its extensions, so there is no build step.
(() => {
  const name = 'ball-motion-page';
  let shared;  // JupyterLab's own modules: module name -> version -> how to get it

  async function module(wanted) {
    const [found] = Object.values(shared[wanted]);
    return (await found.get())();
  }

  const seen = new WeakSet();

  async function open(page) {
    if (!page?.context?.sessionContext || seen.has(page)) return;
    seen.add(page);
    const { context, content } = page;
    await context.ready;
    if (!context.model.getMetadata?.('bowlcore')?.run_on_open) return;
    page.addClass('bowlcore-lesson');
    page.toolbar.hide();
    // Results of an earlier day belong to a Python that is gone: do not show them as live.
    for (const cell of content.widgets) cell.model.clearExecution?.();
    while (!context.sessionContext.session?.kernel) {
      if (page.isDisposed) return;
      await new Promise(later => setTimeout(later, 100));
    }
    const { NotebookActions } = await module('@jupyterlab/notebook');
    await NotebookActions.runCells(content, content.widgets, context.sessionContext);
    page.addClass('bowlcore-ran');
    // Saved, or the browser asks about unsaved changes when the page is closed.
    await context.save();
  }

  // In a lesson a letter typed by accident must not delete, add or fold a part of it, and a panel's lists and buttons
  // keep their own keys. JupyterLab passes over keys typed inside an element marked so; the element still gets them.
  function noCommandsOfTheDesk(event) {
    const { key, target } = event;
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    const single = key.length === 1 || key === 'ArrowLeft' || key === 'ArrowRight';
    const ofTheDesk = single && target.closest?.('.bowlcore-lesson .jp-mod-commandMode');
    if (!ofTheDesk && !target.closest?.('.bowlcore-lesson .jp-OutputArea-output')) return;
    target.setAttribute('data-lm-suppress-shortcuts', 'true');
    setTimeout(() => target.removeAttribute('data-lm-suppress-shortcuts'));
  }

  function add(kind, about) {
    document.head.append(Object.assign(document.createElement(kind), about));
  }

  function activate(app) {
    const look = () => open(app.shell.currentWidget);
    app.restored.then(() => {
      app.shell.currentChanged.connect(look);
      look();
    });
    // JupyterLab changes the address for each page but does not follow the browser's Back button.
    window.addEventListener('popstate', () => {
      const path = decodeURIComponent(location.pathname.split('/doc/tree/')[1] ?? '');
      if (path) app.commands.execute('docmanager:open', { path });
    });
  }

  const beside = name => new URL(name, document.currentScript.src).href;
  add('link', { rel: 'stylesheet', href: beside('page.css') });
  add('script', { src: beside('reach.js') });
  window.addEventListener('keydown', noCommandsOfTheDesk, true);

  const plugin = { id: `${name}:plugin`, autoStart: true, activate };
  window._JUPYTERLAB = window._JUPYTERLAB || {};
  window._JUPYTERLAB[name] = {
    init: scope => { shared = scope; },
    get: () => () => ({ __esModule: true, default: plugin })
  };
})();
