// Says in a bar when the page has lost the program behind it: its kernel or the whole server.
(() => {
  const LOST =
    "The connection to the worksheet’s program is lost; trying to connect again. " +
    "The numbers on the page still move, the rest waits.";
  const GONE =
    "The worksheet’s program has stopped. The numbers on the page still move, nothing else does. ";

  function say(words, { reload = false } = {}) {
    const bar = document.getElementById("connection");
    bar.replaceChildren(words);
    if (!reload) return;
    const button = document.createElement("button");
    button.textContent = "Reload to connect again";
    button.onclick = () => location.reload();
    bar.append(button);
  }

  function watch(kernel) {
    let gone = false;
    const stop = () => {
      gone = true;
      say(GONE, { reload: true });
    };
    const connected = async () => {
      say("");
      // Its death may have gone unheard here: then the kernel knows none of the page's widgets.
      const answer = await kernel.requestCommInfo({ target_name: "jupyter.widget" });
      const widgets = Object.keys(answer.content.comms ?? {});
      if (!widgets.length && document.querySelector("[data-widget]")) stop();
    };
    kernel.statusChanged.connect((_, status) => {
      // A kernel that crashed is replaced by an empty one: this page's sheet is not in it.
      if (["restarting", "autorestarting", "dead"].includes(status)) stop();
    });
    kernel.connectionStatusChanged.connect((_, status) => {
      if (gone) return;
      if (status === "connected") connected().catch(() => {}); // lost again meanwhile: said below
      if (status === "connecting") say(LOST);
      if (status === "disconnected") stop();
    });
    if (kernel.connectionStatus === "connected") connected().catch(() => {});
  }

  // Voila's page program puts itself here when it has started.
  let app;
  Object.defineProperty(window, "jupyterapp", {
    get: () => app,
    set: (started) => {
      app = started;
      app.widgetManagerPromise.promise.then((manager) => watch(manager.kernel));
    },
  });

  // Leaving a page stops its kernel, so a page kept by the browser's Back button must start anew.
  addEventListener("pageshow", (event) => {
    if (event.persisted) location.reload();
  });
})();
