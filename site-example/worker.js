globalThis.rungbookOffline = {"site":"a7125106b361","version":"e070c66b","shell":["index.html","before-you-start.html","self-test.html","where-i-stand.html","today.html","my-people.html","search.html","cautions.html","if-it-hurts.html","if-you-are-stuck.html","words.html"]};
importScripts('theme/offline.js?v=2a059ceb');
