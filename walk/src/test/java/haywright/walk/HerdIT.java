package haywright.walk;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;

import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import java.util.regex.Pattern;
import org.assertj.core.api.Assertions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

/** A herd that is nobody's demo, on a phone and without scripts: put in, erred on, corrected, looked at, undone, by keys alone. */
class HerdIT {
    private static final DateTimeFormatter LONG = DateTimeFormatter.ofPattern("MMM d, uuuu", Locale.US);

    @RegisterExtension
    private static final Walker walker = new Walker();

    @RegisterExtension
    private static final House house = new House();

    @Test
    void withoutScriptsOnAPhone() {
        var page = walker.page(360, 740, false);
        page.navigate(house.begin());
        Walker.fill(page, "Ranch name", "Sweetwater Bench");
        Walker.press(page, "Add the ranch");
        page.waitForURL(Pattern.compile(".*/ranch/.*"));
        page.navigate(page.url().replaceAll("/$", "") + "/herd");
        Walker.follow(page, "Mature cows Cows that calve: bred, nursing or open.");

        var today = LocalDate.now();
        Walker.fill(page, "Name of the group", "Old cows");
        Walker.fill(page, "Head", "120");
        page.getByLabel("Breed").first().selectOption("Hereford");
        Walker.fill(page, "Average weight", "128");
        Walker.fill(page, "Body condition score", "3.5");
        Walker.unfold(page, "Scale, day and spread of the weights");
        Walker.fill(page, "Weighed on", LONG.format(today.minusDays(5)));
        Walker.fill(page, "Weight at score 5", "1280");
        Walker.unfold(page, "Calving week by week, or from breeding dates");
        Walker.fill(page, "Week 1 begins", LONG.format(today.plusDays(100)));
        Walker.fill(page, "Head, week 1", "70");
        Walker.fill(page, "Head, week 2", "60");
        Walker.press(page, "Save the group");

        // refused beside the field, with the guess named, and everything typed still there
        assertThat(page).hasTitle(Pattern.compile("^Error: "));
        assertThat(page.locator("#problems")).containsText("Did you mean 1,280 lb?");
        assertThat(page.locator("#problems")).containsText("cannot hold more than the 120 head");
        assertThat(page.getByLabel("Head, week 2")).hasValue("60");
        Assertions.assertThat(Walker.misfits(page)).isEmpty();

        // away and back: the draft waits; corrected, it asks about what is unusual only
        page.navigate(page.url());
        house.restart(page);
        page.reload();
        assertThat(page.getByLabel("Head, week 2")).hasValue("60");
        Walker.fill(page, "Average weight", "1,180 lb");
        Walker.fill(page, "Head, week 2", "50");
        Walker.press(page, "Save the group");
        assertThat(page.getByText("Is this right?")).hasCount(1);
        page.getByLabel("Yes, this is right").press("Space");
        Walker.press(page, "Save the group");

        assertThat(page.getByText("Group added: Old cows")).isVisible();
        assertThat(page.locator("#main")).containsText("120 due from");
        assertThat(page.locator("#main")).containsText("If they hold condition on less");
        page.locator(".figures a").first().press("Enter");
        assertThat(page.locator(".lines").first()).isVisible();
        Assertions.assertThat(Walker.misfits(page)).isEmpty();
        page.goBack();

        Walker.press(page, "Undo");
        assertThat(page.getByText("No cattle yet.")).isVisible();
        Walker.press(page, "Undo");
        Walker.follow(page, "Old cows");
        assertThat(page.locator("svg.picture")).hasCount(4);
        assertThat(page.locator("#main")).containsText("per head per day now");
        Walker.unfold(page, "Week by week");
        Assertions.assertThat(Walker.misfits(page)).isEmpty();

        Walker.follow(page, "Need on a day");
        Walker.fill(page, "On which day", "31 Nov 2026");
        Walker.press(page, "Show");
        assertThat(page.locator("#problems")).containsText("there is no such day");
        Walker.fill(page, "On which day", LONG.format(today.plusDays(150)));
        Walker.press(page, "Show");
        assertThat(page.locator("#main")).containsText("for milk");
        assertThat(page.locator("#main")).containsText("mature cow after calving");
        Assertions.assertThat(Walker.misfits(page)).isEmpty();

        house.restart(page);
        page.navigate(page.url().replaceAll("/herd/.*", "/herd"));
        assertThat(page.locator("#main")).containsText("120 due from");
        Walker.follow(page, "Delete Old cows");
        Walker.press(page, "Delete them");
        assertThat(page.getByText("No cattle yet.")).isVisible();
        Walker.leave(page);
    }

    /** What only a form with something wrong on it shows. */
    @Test
    void errorsAndQuestionsAreAccessible() {
        var page = walker.page(360, 740, true);
        page.navigate(house.begin());
        Walker.fill(page, "Ranch name", "Errors only");
        Walker.press(page, "Add the ranch");
        page.waitForURL(Pattern.compile(".*/ranch/.*"));
        page.navigate(page.url().replaceAll("/$", "") + "/herd/new/mature_cow");
        Walker.unfold(page, "Calving week by week, or from breeding dates");
        Walker.fill(page, "Head, week 1", "many");
        Walker.press(page, "Save the group");
        assertThat(page.locator("#problems")).isFocused();
        assertThat(page.getByLabel("Head, week 1").first()).hasValue("many");
        Assertions.assertThat(Walker.barriers(page)).isEmpty();
        Assertions.assertThat(Walker.misfits(page)).isEmpty();
        Walker.leave(page);
    }
}
