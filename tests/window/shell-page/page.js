globalThis.heard = [];
globalThis.fairhand.onEvent((json) => globalThis.heard.push(json));
document.getElementById('ready').textContent = 'ready';
