globalThis.rungbookOffline = {"site":"a7125106b361","version":"f55ad54242454b56","shell":["index.html","self-test.html","today.html","where-i-stand.html","search.html","if-it-hurts.html","before-you-start.html","cautions.html","if-you-are-stuck.html","words.html","my-people.html"],"language":"en"};
importScripts('theme/offline.js?v=53ae22d4');
if (!globalThis.rungbookIs.includes('offline.js=53ae22d4')) throw new Error('offline.js: of another version');
