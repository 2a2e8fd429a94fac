package haywright.walk;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Browser;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.BrowserType;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.Playwright;
import com.microsoft.playwright.TimeoutError;
import com.microsoft.playwright.options.AriaRole;
import com.microsoft.playwright.options.LoadState;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.extension.AfterAllCallback;
import org.junit.jupiter.api.extension.BeforeAllCallback;
import org.junit.jupiter.api.extension.ExtensionContext;

/**
 * One browser for a test class, and what a person or an inspector does with a page. At its end nothing may have been asked
 * of any other machine.
 */
final class Walker implements BeforeAllCallback, AfterAllCallback {
    private static final String AXE = axe();

    private Playwright playwright;
    private Browser browser;
    private final List<String> elsewhere = new ArrayList<>();
    private final List<String> complaints = new ArrayList<>();

    @Override
    public void beforeAll(ExtensionContext context) {
        playwright = Playwright.create();
        // as root, as in a container, Chromium runs only without its sandbox
        browser = playwright
                .chromium()
                .launch(new BrowserType.LaunchOptions()
                        .setExecutablePath(Path.of(Optional.ofNullable(System.getenv("CHROMIUM"))
                                .filter(path -> !path.isBlank())
                                .orElse("/usr/bin/chromium")))
                        .setArgs(List.of("--no-sandbox", "--disable-gpu")));
    }

    @Override
    public void afterAll(ExtensionContext context) {
        assertThat(elsewhere).isEmpty();
        browser.close();
        playwright.close();
    }

    /** A fresh browser profile; whatever it asks of any other machine is noted and goes nowhere. */
    Page page(int width, int height, boolean scripts) {
        BrowserContext context = browser.newContext(
                new Browser.NewContextOptions().setViewportSize(width, height).setJavaScriptEnabled(scripts));
        context.setDefaultTimeout(20_000);
        context.route("**/*", route -> {
            if (route.request().url().startsWith("http://127.0.0.1:")) {
                route.resume();
            } else {
                elsewhere.add(route.request().url());
                route.abort();
            }
        });
        var page = context.newPage();
        page.onConsoleMessage(message -> {
            if (message.type().equals("error")
                    && !message.text().contains("422")
                    && !message.text().contains("409")) {
                complaints.add(message.text());
            }
        });
        return page;
    }

    /**
     * Clicks a link or a button. With scripts off the driver's click can wait for ever: where a page still moved at its
     * first look it retries by timers of the page, and none run. Then the key does it.
     */
    static void push(Locator what) {
        try {
            what.click(new Locator.ClickOptions().setTimeout(4_000));
        } catch (TimeoutError e) {
            what.press("Enter");
        }
    }

    /** Clicks the one button of this name. */
    static void push(Page page, String button) {
        push(button(page, button));
    }

    /** Presses the one button of this name by key. */
    static void press(Page page, String button) {
        button(page, button).press("Enter");
    }

    static Locator button(Page page, String name) {
        return page.getByRole(
                AriaRole.BUTTON, new Page.GetByRoleOptions().setName(name).setExact(true));
    }

    /** Follows a link of the page itself by key. */
    static void follow(Page page, String name) {
        link(page, name).press("Enter");
    }

    static Locator link(Page page, String name) {
        return page.locator("#main")
                .getByRole(
                        AriaRole.LINK,
                        new Locator.GetByRoleOptions().setName(name).setExact(true))
                .first();
    }

    /** Opens what is folded under this heading, by key. */
    static void unfold(Page page, String heading) {
        page.locator("summary", new Page.LocatorOptions().setHasText(heading))
                .first()
                .press("Enter");
    }

    static void fill(Page page, String label, String value) {
        page.getByLabel(label).first().fill(value);
    }

    /** Closes a page's profile once the page is at rest: what it still asked for would fail the close. */
    static void leave(Page page) {
        page.waitForLoadState(LoadState.NETWORKIDLE);
        page.context().close();
    }

    /** No script failed and the content policy refused nothing. */
    void nothingWasComplainedAbout() {
        assertThat(complaints).isEmpty();
    }

    /** What axe-core finds on a page by the rules of WCAG 2.2 A and AA, and whatever has a contrast below 7:1. */
    static List<String> barriers(Page page) {
        page.evaluate(AXE);
        return found(
                page,
                page.evaluate("async () => (await axe.run(document, {runOnly: {type: 'tag', values:"
                        + " ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice']}, rules:"
                        + " {'color-contrast-enhanced': {enabled: true}}})).violations.map(v => v.id + ': ' + v.help + ' '"
                        + " + v.nodes.map(n => n.target + ' ' + n.failureSummary).join(' | '))"));
    }

    /** Whatever makes a page scroll sideways, and whatever is pressed on it and is less than 44 px high. */
    static List<String> misfits(Page page) {
        page.waitForLoadState(); // a page whose styles are still on their way has no sizes yet
        var misfits = new ArrayList<String>();
        misfits.addAll(found(
                page,
                page.evaluate("(e => e.scrollWidth > e.clientWidth ? ['scrolls sideways by ' + (e.scrollWidth -"
                        + " e.clientWidth)] : [])(document.scrollingElement)")));
        misfits.addAll(found(
                page,
                page.evaluate("[...document.querySelectorAll('button, .button, input:not([type=hidden],"
                        + " [type=radio], [type=checkbox]), select, textarea, summary, .tick, .trail a, .ways a, .slips .do a')]"
                        + ".map(e => [e, e.getBoundingClientRect()]).filter(([e, r]) => r.width > 0 && r.height < 43.5)"
                        + ".map(([e, r]) => 'too small to press: ' + e.outerHTML.slice(0, 80) + ' ' + r.height)")));
        return misfits;
    }

    private static List<String> found(Page page, Object faults) {
        var at = page.url() + " at " + page.viewportSize().width + " px: ";
        return ((List<?>) faults).stream().map(fault -> at + fault).toList();
    }

    private static String axe() {
        try (InputStream in = Walker.class.getResourceAsStream("axe.min.js")) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
