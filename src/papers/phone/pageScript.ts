/**
 * What the phone page does: shows one setup at a time, keeps ticks and measurements on the phone, and gives them back as a small
 * file. Plain script for any browser of the last years; it reads what the page itself carries, and sends nothing.
 */
export const pageScript = `
(function () {
  'use strict';
  var about = JSON.parse(document.getElementById('about').textContent);
  var key = 'setworthy measured|' + about.shoot + '|' + about.revision;
  var kept = { ticks: {}, figures: {} };
  var said = document.getElementById('said');
  try {
    var read = JSON.parse(localStorage.getItem(key) || 'null');
    if (read && read.ticks && read.figures) kept = read;
  } catch (e) { tell('This phone does not let the page keep anything: give it back before you close it.'); }
  function tell(text) { said.textContent = text; }
  function keep() {
    try { localStorage.setItem(key, JSON.stringify(kept)); count(); } catch (e) { tell('Not kept on this phone: give it back before you close the page.'); }
  }
  function count() {
    var ticks = Object.keys(kept.ticks).length, figures = Object.keys(kept.figures).length;
    tell(ticks + (ticks === 1 ? ' tick, ' : ' ticks, ') + figures + (figures === 1 ? ' figure' : ' figures'));
  }
  function today() {
    var now = new Date(), two = function (n) { return (n < 10 ? '0' : '') + n; };
    return now.getFullYear() + '-' + two(now.getMonth() + 1) + '-' + two(now.getDate());
  }
  var own = Object.prototype.hasOwnProperty;
  document.querySelectorAll('input[data-tick]').forEach(function (box) {
    var name = box.getAttribute('data-tick');
    box.checked = own.call(kept.ticks, name);
    box.addEventListener('change', function () { if (box.checked) kept.ticks[name] = today(); else delete kept.ticks[name]; keep(); });
  });
  var fields = document.querySelectorAll('input[data-figure]');
  fields.forEach(function (field) {
    var path = field.getAttribute('data-figure');
    if (own.call(kept.figures, path)) field.value = kept.figures[path].typed;
    field.addEventListener('input', function () {
      var typed = field.value.trim(), value = Number(typed.replace(',', '.').replace('\\u2212', '-'));
      var good = typed !== '' && isFinite(value), minus = Number(field.getAttribute('data-minus') || 0);
      if (good && minus > 0) {
        if (value < minus) { good = false; tell('Less than what comes before the screen: measure again.'); }
        value = Math.round((value - minus) * 1000) / 1000;
      }
      field.setAttribute('aria-invalid', typed !== '' && !good ? 'true' : 'false');
      if (good) kept.figures[path] = { typed: typed, value: value, says: field.getAttribute('data-says'), on: today() };
      else delete kept.figures[path];
      keep();
      if (typed !== '' && !isFinite(value)) tell('\\u201c' + typed + '\\u201d is not a number.');
      fields.forEach(function (other) { if (other !== field && other.getAttribute('data-figure') === path && !field.hasAttribute('data-minus')) other.value = field.value; });
    });
  });
  var pick = document.getElementById('setup'), sections = document.querySelectorAll('section[data-setup]');
  function show() { sections.forEach(function (section) { section.hidden = section.getAttribute('data-setup') !== pick.value; }); }
  pick.addEventListener('change', show);
  show();
  document.getElementById('give').addEventListener('click', function () {
    var figures = Object.keys(kept.figures).sort().map(function (path) { var one = kept.figures[path]; return { path: path, says: one.says, value: one.value, measuredOn: one.on }; });
    var ticks = {};
    Object.keys(kept.ticks).sort().forEach(function (name) { ticks[name] = kept.ticks[name]; });
    var text = JSON.stringify({ format: 'setworthy measured', version: 0, shoot: about.shoot, revision: about.revision, figures: figures, ticks: ticks }, null, 1);
    var link = document.createElement('a');
    link.href = URL.createObjectURL(new Blob([text], { type: 'application/json' }));
    link.download = 'measured-' + today() + '.json';
    link.click();
    setTimeout(function () { URL.revokeObjectURL(link.href); }, 10000);
  });
  count();
})();
`;
