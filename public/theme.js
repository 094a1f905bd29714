// Runs before the first paint, so that a dark auditorium never gets a white flash. A file rather than an inline script,
// so that a strict content security policy holds.
(() => {
  const chosen = (() => {
    try {
      return localStorage.getItem('rigledger-theme');
    } catch {
      // Storage is switched off on this device: the device's own scheme holds.
      return null;
    }
  })();
  if (chosen === 'day' || chosen === 'dark') document.documentElement.dataset.theme = chosen;
})();
