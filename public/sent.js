/*
 * Part of the service worker. A file that another program sends to the installed one comes as a form: it is put down where the page
 * finds it (src/app/arriving.ts), and the page is opened. Nothing is read here, nothing goes further.
 */
self.addEventListener('fetch', (event) => {
  const { method, url } = event.request;
  if (method === 'POST' && url === new URL('sent', self.registration.scope).href) {
    event.respondWith(putDown(event.request));
  }
});

async function putDown(request) {
  try {
    const file = (await request.formData()).get('job');
    const shelf = await caches.open('sent-job');
    await shelf.put('sent-job', new Response(file, { headers: { 'X-File-Name': encodeURIComponent(file.name) } }));
  } catch {
    // The page finds nothing there, and says so.
  }
  return Response.redirect('./#sent', 303);
}
