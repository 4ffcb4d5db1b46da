// Before anything is shown: dark or light as it was chosen here, or as the device is set.
{
  let chosen = null;
  try {
    chosen = localStorage.getItem('theme');
  } catch {
    // Nothing is kept in this browser.
  }
  document.documentElement.dataset.theme = chosen ?? (matchMedia('(prefers-color-scheme: dark)').matches ? 'dark' : 'light');
}
