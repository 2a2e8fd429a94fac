package haywright.walk;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;

import com.microsoft.playwright.Page;
import java.util.regex.Pattern;
import org.assertj.core.api.Assertions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

/** A field drawn on the page: by finger on a phone without scripts, by mouse on a desk, and by keyboard alone. */
class DrawFieldIT {
    @RegisterExtension
    private static final Walker walker = new Walker();

    @RegisterExtension
    private static final House house = new House();

    private static void aSheet(Page page, String ranch) {
        page.navigate(house.begin());
        page.getByLabel("Ranch name").fill(ranch);
        Walker.push(page, "Add the ranch");
        assertThat(page).hasURL(Pattern.compile("/ranch/.*/"));
        page.navigate(page.url().replaceAll("\\?.*", "") + "take/fields/draw");
        page.getByLabel("Field name").fill("Creek meadow");
        page.getByLabel("Latitude").fill("44.5031, -109.5012");
        Walker.push(page, "Lay out the sheet");
        assertThat(page.getByText("1 corner so far; a field needs three or more."))
                .isVisible();
    }

    /** @param x, y shares of the sheet */
    private static void tap(Page page, double x, double y, String then) {
        page.waitForLoadState();
        var sheet = page.locator(page.viewportSize().width > 1000 ? "input.sketch.large" : "input.sketch.small");
        sheet.scrollIntoViewIfNeeded();
        var box = sheet.boundingBox();
        page.mouse().click(box.x + x * box.width, box.y + y * box.height);
        assertThat(page.getByText(then).first()).isVisible();
    }

    @Test
    void byFingerOnAPhoneWithoutScripts() {
        var page = walker.page(360, 740, false);
        aSheet(page, "Alkali Bench");
        tap(page, 0.56, 0.94, "2 corners so far");
        tap(page, 0.56, 0.44, "acres, closed from corner 3 back to 1.");
        tap(page, 0.3, 0.99, "it crosses edge 1 to 2");
        tap(page, 0.06, 0.44, "acres, closed from corner 4 back to 1.");
        Walker.push(page, "Undo the last corner");
        assertThat(page.getByText("acres, closed from corner 3 back to 1.")).isVisible();
        Walker.push(page, "Close it and save");
        assertThat(page.getByText("Field drawn: Creek meadow")).isVisible();
        assertThat(page.getByText("stops on an M")).isVisible();
        Walker.leave(page);
    }

    @Test
    void byMouseAndByKeyboardAndReadableToAll() {
        var page = walker.page(1280, 900, true);
        aSheet(page, "Sage Flat");
        tap(page, 0.56, 0.94, "2 corners so far");
        page.getByLabel("Distance from the last corner").fill("440");
        page.getByLabel("Bearing, degrees").fill("north");
        page.getByLabel("Bearing, degrees").press("Enter");
        assertThat(page).hasTitle(Pattern.compile("^Error: "));
        page.getByLabel("Bearing, degrees").fill("0");
        page.getByLabel("Bearing, degrees").press("Enter");
        assertThat(page.getByText("acres, closed from corner 3 back to 1.")).isVisible();
        Assertions.assertThat(Walker.barriers(page)).isEmpty();
        for (int width : new int[] {1280, 360, 320}) {
            page.setViewportSize(width, 740);
            Assertions.assertThat(Walker.misfits(page)).isEmpty();
        }
        Walker.push(page, "Close it and save");
        assertThat(page.getByText("Field drawn: Creek meadow")).isVisible();
        Assertions.assertThat(Walker.barriers(page)).isEmpty();
        Assertions.assertThat(Walker.misfits(page)).isEmpty();
        var field = page.url().replaceAll("\\?.*", "");
        for (var path : new String[] {"/change", "/zones", "/zone", "/draw"}) {
            page.navigate(field + path);
            Assertions.assertThat(Walker.barriers(page)).isEmpty();
            Assertions.assertThat(Walker.misfits(page)).isEmpty();
        }
        walker.nothingWasComplainedAbout();
        Walker.leave(page);
    }
}
