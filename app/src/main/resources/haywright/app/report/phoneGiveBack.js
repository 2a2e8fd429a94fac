'use strict';
/* What every sheet on a phone shares: the check letter, what is kept on the phone, and how it is given back. */
var SIGNS = '0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ-';
function checkValue(text) {
  var v = 1;
  for (var i = 0; i < text.length; i++) { v = (2 * v + SIGNS.indexOf(text[i])) % 37; }
  return v;
}
function checked(text) {
  for (var digit = 0; digit < 10; digit++) {
    var sign = SIGNS[((-2 * checkValue(text + digit)) % 37 + 37) % 37];
    if (sign >= 'A' && sign <= 'Z' && sign !== 'I' && sign !== 'O') { return text + digit + sign; }
  }
  return '';
}
/* A sheet says: its line ('' while something is wanting) and what is wanting; its file and the file's name; how far it
   has come; data to keep, and how to put them back; shown(line) for what else changes with the line. */
function giveBack(form, sheet) {
  var key = 'haywright-sheet-' + form.dataset.code;
  var day = form.elements.namedItem('on');
  var state = document.getElementById('state');
  var copy = document.getElementById('copy');
  var file = document.getElementById('file');
  var given = '';
  function say(words) {
    var text = sheet.line();
    state.textContent = words + (given ? ', ' + given : ', not given back yet') + '. ' + sheet.progress();
    document.getElementById('line').textContent = text || sheet.wanting();
    copy.disabled = file.disabled = !text;
    sheet.shown(text);
  }
  function keep() {
    try {
      localStorage.setItem(key, JSON.stringify(sheet.data()));
      say('Saved on this phone');
    } catch (e) {
      say('Not saved: this phone saves nothing. Give the line back before you close the page, or use the paper.');
    }
  }
  function gaveBack(how) {
    given = how + ' at ' + new Date().toTimeString().slice(0, 5);
    keep();
  }
  function select() {
    var range = document.createRange();
    range.selectNodeContents(document.getElementById('line'));
    var chosen = window.getSelection();
    chosen.removeAllRanges();
    chosen.addRange(range);
    say('The line is selected: copy it by hand');
  }
  var words = 'Nothing entered yet';
  try {
    var left = JSON.parse(localStorage.getItem(key) || 'null');
    if (left) {
      words = 'Saved on this phone';
      sheet.restore(left);
    }
  } catch (e) { /* nothing kept, or kept by another program: start empty */ }
  if (!day.value) {
    var d = new Date();
    day.value = d.getFullYear() + '-' + ('0' + (d.getMonth() + 1)).slice(-2) + '-' + ('0' + d.getDate()).slice(-2);
  }
  document.getElementById('give').hidden = false;
  say(words);
  form.addEventListener('input', function () { given = ''; keep(); });
  form.addEventListener('submit', function (e) { e.preventDefault(); });
  copy.addEventListener('click', function () {
    if (navigator.clipboard && window.isSecureContext) {
      navigator.clipboard.writeText(sheet.line()).then(function () { gaveBack('line copied'); }, select);
    } else { select(); }
  });
  file.addEventListener('click', function () {
    var link = document.createElement('a');
    link.href = URL.createObjectURL(new Blob([sheet.file()], { type: 'text/plain' }));
    link.download = sheet.name;
    link.click();
    gaveBack('file saved');
  });
}
