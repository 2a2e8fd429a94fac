package haywright.walk;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;

import com.microsoft.playwright.Page;
import java.time.LocalDate;
import java.time.Month;
import java.util.List;
import java.util.regex.Pattern;
import org.assertj.core.api.Assertions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

/**
 * An invented ranch of 150 cows from an empty round to its first letter and a winter book, typed as people type: no save is
 * refused, and what is taken for what was left empty is said.
 */
class FirstLetterIT {
    @RegisterExtension
    static final Walker walker = new Walker();

    @RegisterExtension
    private static final House house = new House();

    @Test
    void withScripts() {
        var page = walker.page(1280, 900, true);
        walk(page);
        Assertions.assertThat(Walker.barriers(page)).isEmpty();
        walker.nothingWasComplainedAbout();
        Walker.leave(page);
    }

    @Test
    void withoutScriptsOnAPhone() {
        var page = walker.page(360, 740, false);
        walk(page);
        Assertions.assertThat(Walker.misfits(page)).isEmpty();
        Walker.leave(page);
    }

    private static void walk(Page page) {
        page.navigate(house.begin());
        fill(page, "name", "Wet Boot Ranch", "town", "Burwell, NE", "turnout", "May 10");
        Walker.press(page, "Add the ranch");
        page.waitForURL(Pattern.compile(".*/ranch/.*"));
        assertThat(page.locator(".dates")).containsText("May 10, " + year());

        Walker.follow(page, "Add the first lot");
        Walker.follow(page, "Bales Counted, with the weight of one.");
        fill(
                page,
                "name",
                "North meadow",
                "count",
                "310 bales",
                "baleWeight",
                "1,250#",
                "replacementPrice",
                "$140/ton");
        page.locator("[name=feedClass]").selectOption("grass_hay");
        page.getByLabel("large round bales").press("Space");
        page.locator("[name=storage]").selectOption("outside_on_ground");
        press(page, "Save, and add another like it", "Lot added: North meadow");
        assertThat(page.locator("[name=baleWeight]")).hasValue("1,250");
        fill(page, "name", "Millet", "count", "80", "baleWeight", "", "replacementPrice", "");
        page.locator("[name=feedClass]").selectOption("cereal_hay");
        press(page, "Save the lot", "Lot added: Millet");
        Walker.follow(page, "Add a feed to buy");
        fill(page, "name", "20% cake", "price", "$365/T");
        press(page, "Save the feed", "taken as cake");

        page.navigate(page.url().replaceAll("/lots.*", "/herd"));
        Walker.follow(page, "Mature cows Cows that calve: bred, nursing or open.");
        fill(page, "name", "Cows", "head", "150 cows", "weight", "1,300 lb", "conditionScore", "5½");
        fill(page, "calvingFirst", "3/15");
        press(page, "Save, and add another group", "9 weeks of calving");
        Walker.follow(page, "Growing cattle Weaned calves, replacement heifers, anything fed to gain.");
        fill(page, "name", "Calves", "head", "60 hd", "weight", "540", "conditionScore", "5");
        press(page, "Save the group", "gain 1.5 lb a day");

        page.navigate(page.url().replaceAll("/herd.*", "/letter"));
        Walker.follow(page, "Cows");
        fill(page, "adviser", "Jo Fenn", "adviserPhone", "308-555-0142");
        fill(page, "veterinarian", "Dr. Ruiz", "veterinarianPhone", "308-555-0177");
        press(page, "Put these on the letters", "Whom to call entered");
        assertThat(page.locator(".feed-letter")).containsText("North meadow");
        assertThat(page.locator(".feed-letter")).containsText("Jo Fenn");
        assertThat(page.locator(".feed-letter")).containsText("price of Millet");

        page.navigate(page.url().replaceAll("/letter.*", "/winter"));
        assertThat(page.locator("#book")).isVisible();
        assertThat(page.locator("#book")).containsText("price of Millet");
        page.navigate(page.url().replaceAll("/winter.*", "/find?q=cake"));
        Walker.follow(page, "20% cake");
        assertThat(page.locator("[name=price]")).hasValue("365");
    }

    /** Of the next May 10. */
    private static int year() {
        var today = LocalDate.now();
        var day = LocalDate.of(today.getYear(), Month.MAY, 10);
        return today.isAfter(day) ? today.getYear() + 1 : today.getYear();
    }

    private static void fill(Page page, String... boxes) {
        for (int i = 0; i < boxes.length; i += 2) {
            page.locator("[name=" + boxes[i] + "]").fill(boxes[i + 1]);
        }
    }

    /** Saves without a word of something to fix. */
    private static void press(Page page, String button, String notice) {
        Walker.press(page, button);
        for (var said : List.of("Saved.", notice)) {
            assertThat(page.getByText(said).first()).isVisible();
        }
        assertThat(page.locator("#problems")).hasCount(0);
    }
}
