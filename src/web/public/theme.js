// runs before the page is painted, so that a chosen theme never flashes the other one
try {
  const theme = localStorage.getItem("theme");
  if (theme === "light" || theme === "dark") document.documentElement.dataset.theme = theme;
} catch {
  // storage refused: the device's own setting holds
}
