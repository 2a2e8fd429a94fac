package haywright.walk;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;

import com.microsoft.playwright.Page;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

/** A form that is not let in, is too much at once or meets nobody stays as it was typed, and is sent again from there. */
class NotLetInIT {
    @RegisterExtension
    private static final Walker walker = new Walker();

    @RegisterExtension
    private static final House house = new House();

    private Page lot(boolean scripts) {
        var page = walker.page(1280, 900, scripts);
        page.navigate(house.begin());
        page.getByLabel("Ranch name").fill("Sagehen Ranch");
        Walker.press(page, "Add the ranch");
        page.waitForURL(Pattern.compile("/ranch/"));
        page.navigate(page.url().replaceFirst("[?].*", "") + "lots/new/bales");
        page.locator("#f-name").fill("Ditch-side stack");
        return page;
    }

    private static void send(Page page) {
        page.locator("form.sheet button[type=submit]:not([hidden])").first().click();
    }

    @Test
    void withScriptsTheFormStays() {
        var page = lot(true);
        var unsent = page.locator("#unsent");
        // the cookie is gone: another browser profile, or cookies deleted
        page.context().clearCookies();
        send(page);
        assertThat(unsent).isVisible();
        assertThat(page.locator("#f-name")).hasValue("Ditch-side stack");
        var door = page.context().newPage();
        door.navigate(house.begin());
        door.close();
        // Haywright is not running
        page.context().setOffline(true);
        send(page);
        assertThat(unsent).containsText("does not answer");
        page.context().setOffline(false);
        // more than a form may hold
        page.locator("#f-name").fill("x".repeat(1_300_000));
        send(page);
        assertThat(unsent).containsText("kB");
        page.locator("#f-name").fill("Ditch-side stack");
        // a character nobody can type, from a paste
        page.locator("#f-name").evaluate("box => box.value = 'Ditch' + String.fromCharCode(0) + 'side'");
        send(page);
        assertThat(unsent).containsText("NUL");
        page.locator("#f-name").fill("Ditch-side stack");
        send(page);
        assertThat(page.locator("#problems")).isVisible();
        assertThat(unsent).isHidden();
        assertThat(page.locator("#f-name")).hasValue("Ditch-side stack");
    }

    @Test
    void aSheetTooLargeToSendStays() {
        var page = lot(true);
        page.navigate(page.url().replaceFirst("lots/new/.*", "reports/bring"));
        page.locator("#f-text").fill("x".repeat(1_300_000));
        page.locator("#f-laboratory").fill("Niobrara Forage Laboratory");
        page.context().clearCookies();
        page.locator("form[action$='reports/bring'] .actions button[type=submit]")
                .click();
        assertThat(page.locator("#unsent")).isVisible();
        assertThat(page.locator("#f-laboratory")).hasValue("Niobrara Forage Laboratory");
        assertThat(page.locator("#f-text")).hasValue(Pattern.compile("x{1000}"));
    }

    @Test
    void withoutScriptsWhatWasTypedIsThereToCopy() {
        var page = lot(false);
        page.context().clearCookies();
        send(page);
        assertThat(page.locator("#f-key")).isVisible();
        assertThat(page.locator("textarea[readonly]").first()).hasValue(Pattern.compile("Ditch-side stack"));
    }
}
