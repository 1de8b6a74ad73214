// What a lesson needs besides Voila: a mark when it has run.
(() => {
  // Voila puts a place-holder for each cell and takes it away when the cell has run.
  const waiting = () => document.querySelector('.voila-skeleton-container');
  const loading = () => [...document.querySelectorAll('.jupyter-widgets')].some(w => w.textContent === 'Loading widget...');
  let begun = false;

  function look() {
    begun ||= waiting() !== null;
    // The same mark as in the lab: every cell has run and its panel is on the page.
    if (begun && !waiting() && !loading()) document.body.classList.add('bowlcore-ran');
  }

  window.addEventListener('load', () => {
    let soon = 0;
    const later = () => { begun ||= waiting() !== null; clearTimeout(soon); soon = setTimeout(look, 200); };
    new MutationObserver(later).observe(document.body, { childList: true, subtree: true });
    // The contents hand out the mark without which the server does not let a page end its Python when it is left.
    fetch(document.querySelector('.show-all').href);
  });
})();
