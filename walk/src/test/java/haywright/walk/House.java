package haywright.walk;

import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.LoadState;
import haywright.app.document.TinLantern;
import haywright.app.server.Server;
import haywright.app.store.Home;
import haywright.app.store.Store;
import haywright.app.web.Desk;
import java.nio.file.Path;
import java.time.Clock;
import org.junit.jupiter.api.extension.AfterAllCallback;
import org.junit.jupiter.api.extension.BeforeAllCallback;
import org.junit.jupiter.api.extension.ExtensionContext;
import org.junit.jupiter.api.io.TempDir;

/** The program as it runs, on any free port; closed and opened again it must find everything. */
final class House implements BeforeAllCallback, AfterAllCallback {
    private Path folder;
    private Store store;
    private Home home;
    private Server server;

    @Override
    public void beforeAll(ExtensionContext context) throws Exception {
        // through JUnit, which hands out a folder and takes it away after the class
        context.getExecutableInvoker().invoke(House.class.getDeclaredMethod("build", Path.class), this);
    }

    void build(@TempDir Path place) {
        folder = place;
        open(0);
    }

    @Override
    public void afterAll(ExtensionContext context) {
        close();
    }

    private void open(int port) {
        store = Store.inFolder(folder, Clock.systemUTC());
        home = Home.in(folder);
        server = Server.start(
                new Desk(store, Clock.systemUTC(), TinLantern::ranch), home, "127.0.0.1", port, routes -> {});
    }

    /** The address that the program prints when it starts. */
    String begin() {
        return url("/?key=" + home.key());
    }

    String url(String path) {
        return "http://127.0.0.1:" + server.port() + path;
    }

    /** On the same port, as the user's browser would find it; not while the page still loads its fonts. */
    void restart(Page page) {
        page.waitForLoadState(LoadState.NETWORKIDLE);
        int port = server.port();
        close();
        open(port);
    }

    private void close() {
        server.close();
        store.close();
    }
}
