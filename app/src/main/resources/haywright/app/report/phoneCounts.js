(function () {
  'use strict';
  var SIGNS = '0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ-';
  var form = document.getElementById('sheet');
  var state = document.getElementById('state');
  var code = form.dataset.code;
  var scale = Number(form.dataset.scale);
  var key = 'haywright-sheet-' + code;
  var boxes = Array.from(form.querySelectorAll('input[name="count"]'));
  var day = form.querySelector('input[name="on"]');
  var given = '';

  function value(text) {
    var v = 1;
    for (var i = 0; i < text.length; i++) { v = (2 * v + SIGNS.indexOf(text[i])) % 37; }
    return v;
  }
  function checked(text) {
    for (var digit = 0; digit < 10; digit++) {
      var sign = SIGNS[((-2 * value(text + digit)) % 37 + 37) % 37];
      if (sign >= 'A' && sign <= 'Z' && sign !== 'I' && sign !== 'O') { return text + digit + sign; }
    }
    return '';
  }
  function typed() {
    return boxes.map(function (box) { return box.value.trim().replace(/,(?=[0-9]{3}$)/, ''); }).filter(Boolean);
  }
  function isWrong() { return typed().some(function (t) { return !/^[0-9]{1,6}([.][0-9]+)?$/.test(t); }); }
  function line() {
    var on = day.value.replace(/-/g, '').slice(2);
    var all = typed();
    if (!all.length || isWrong() || on.length !== 6) { return ''; }
    var numbers = all.map(function (t) { return Math.round(Number(t) * scale); });
    return checked([code, on].concat(numbers).join('-') + '-');
  }
  function say(words) {
    state.textContent = words + (given ? ', given back at ' + given : ', not given back yet') + '. ' + typed().length + ' of ' + boxes.length + ' put in.';
    var text = line();
    document.getElementById('line').textContent = text || (isWrong() ? 'One of them is not a number.' : 'Put in what you have, and the day.');
    document.getElementById('copy').disabled = document.getElementById('file').disabled = !text;
  }
  function keep() {
    try {
      localStorage.setItem(key, JSON.stringify({ on: day.value, counts: boxes.map(function (b) { return b.value; }) }));
      say('Saved on this phone');
    } catch (e) {
      say('Not saved: this phone keeps nothing. Give the line back before you close the page, or use the paper.');
    }
  }
  function gaveBack() {
    given = new Date().toTimeString().slice(0, 5);
    keep();
  }
  function select() {
    var range = document.createRange();
    range.selectNodeContents(document.getElementById('line'));
    var chosen = window.getSelection();
    chosen.removeAllRanges();
    chosen.addRange(range);
    say('The line is marked: copy it by hand');
  }
  try {
    var left = JSON.parse(localStorage.getItem(key) || 'null');
    if (left) {
      day.value = left.on || '';
      boxes.forEach(function (b, i) { b.value = left.counts[i] || ''; });
    }
  } catch (e) { /* nothing kept, or kept by another program: start empty */ }
  if (!day.value) {
    var d = new Date();
    day.value = d.getFullYear() + '-' + ('0' + (d.getMonth() + 1)).slice(-2) + '-' + ('0' + d.getDate()).slice(-2);
  }
  document.getElementById('give').hidden = false;
  say('Nothing entered yet');
  form.addEventListener('input', function () { given = ''; keep(); });
  form.addEventListener('submit', function (e) { e.preventDefault(); });
  document.getElementById('copy').addEventListener('click', function () {
    if (navigator.clipboard && window.isSecureContext) { navigator.clipboard.writeText(line()).then(gaveBack, select); } else { select(); }
  });
  document.getElementById('file').addEventListener('click', function () {
    var link = document.createElement('a');
    link.href = URL.createObjectURL(new Blob([line() + '\n'], { type: 'text/plain' }));
    link.download = 'sheet-' + code + '.txt';
    link.click();
    gaveBack();
  });
})();
