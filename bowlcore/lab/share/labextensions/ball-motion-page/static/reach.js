// What a keyboard and a screen reader need of panels; the lab and the show view carry it alike.
(() => {
  function look() {
    // A result is read out when it changes, and not each time from a new place, which screen readers pass over.
    for (const box of document.querySelectorAll('.bm-told:not([role])')) box.setAttribute('role', 'status');
    // What is wider than the screen scrolls by itself, and the keyboard must be able to get there.
    for (const box of document.querySelectorAll('.bm-picture, .widget-html-content, .jp-RenderedHTMLCommon')) {
      const wide = box.scrollWidth > box.clientWidth + 1;
      if (wide) box.tabIndex = 0;
      else box.removeAttribute('tabindex');
      box.classList.toggle('bm-wide', wide && box.closest('.bm-picture') !== null);
    }
  }

  let soon = 0;
  const later = () => { soon ||= setTimeout(() => { soon = 0; look(); }, 200); };
  new MutationObserver(later).observe(document.documentElement, { childList: true, subtree: true });
  window.addEventListener('resize', later);
})();
