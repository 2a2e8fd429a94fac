package haywright.walk;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;

import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.AriaRole;
import java.util.regex.Pattern;
import org.assertj.core.api.Assertions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

/** A ranch that is nobody's demo: put in, erred on, corrected, left, come back to, with the program restarted between. */
class NewRanchIT {
    @RegisterExtension
    private static final Walker walker = new Walker();

    @RegisterExtension
    private static final House house = new House();

    @Test
    void withScriptsAtADesk() {
        var page = walker.page(1280, 900, true);
        walk(page, "Sagehen Ranch");
        echoesAndFocus(page);
        walker.nothingWasComplainedAbout();
        Walker.leave(page);
    }

    @Test
    void withoutScriptsOnAPhone() {
        var page = walker.page(360, 740, false);
        walk(page, "Willow Fork");
        page.getByRole(AriaRole.BUTTON, new Page.GetByRoleOptions().setName("The trail"))
                .press("Enter");
        page.locator("#trail").getByText("Herd").press("Enter");
        assertThat(page).hasURL(Pattern.compile("/herd$"));
        assertThat(page.locator("#trail")).isHidden();
        Walker.leave(page);
    }

    private static Page.GetByRoleOptions heading(String name) {
        return new Page.GetByRoleOptions().setName(name).setLevel(1);
    }

    private void walk(Page page, String name) {
        page.navigate(house.begin());
        Walker.press(page, "Add the ranch");
        assertThat(page.getByText("One thing to fix")).isVisible();
        page.getByLabel("Ranch name").fill(name);
        Walker.press(page, "Add the ranch");
        assertThat(page.getByRole(AriaRole.HEADING, heading(name))).isVisible();

        Walker.follow(page, "Add the first lot");
        Walker.follow(page, "Bales Counted, with the weight of one.");
        page.getByLabel("Lot name").fill("Ditch-side stack");
        page.getByLabel("Kind of feed").selectOption("grass_hay");
        page.getByLabel("large round bales").press("Space");
        page.getByLabel("How many bales").fill("210");
        page.getByLabel("Weight of a bale").fill("1.250,5");
        Walker.press(page, "Save the lot");

        // err: every message names its field, and what was typed is still there
        assertThat(page).hasTitle(Pattern.compile("^Error: "));
        assertThat(page.locator("#problems")).isFocused();
        assertThat(page.locator("#problems li")).hasCount(1);
        assertThat(page.getByLabel("Weight of a bale")).hasValue("1.250,5");
        page.locator("#problems a", new Page.LocatorOptions().setHasText("Weight of a bale"))
                .press("Enter");
        assertThat(page.getByLabel("Weight of a bale")).isFocused();

        // go away, restart, come back: the draft waits
        page.navigate(house.begin());
        house.restart(page);
        page.navigate(house.begin());
        Walker.follow(page, name);
        Walker.follow(page, "A lot: Ditch-side stack");
        assertThat(page.getByLabel("Weight of a bale")).hasValue("1.250,5");

        // correct
        page.getByLabel("Weight of a bale").fill("1,250 lb");
        page.getByLabel("Storage").selectOption("tarped");
        page.getByLabel("Price to replace a ton").fill("$165");
        Walker.press(page, "Save the lot");
        assertThat(page.getByText("Lot added: Ditch-side stack")).isVisible();
        assertThat(page.locator("#main").getByText("131 tons").first()).isVisible();

        // the figure opens to its workings
        page.locator(".slip .more summary").first().press("Enter");
        page.getByText("How it is figured").first().press("Enter");
        assertThat(page.getByText("entered as 1250")).isVisible();

        // undo, and undo the undo
        Walker.press(page, "Undo");
        assertThat(page.getByText("No lots yet.")).isVisible();
        Walker.press(page, "Undo");
        assertThat(page.locator("#main").getByText("Ditch-side stack").first()).isVisible();

        // back works
        Walker.follow(page, "Ditch-side stack");
        page.goBack();
        assertThat(page.getByRole(AriaRole.HEADING, heading("Lots"))).isVisible();

        house.restart(page);
        page.reload();
        assertThat(page.locator("#main").getByText("131 tons").first()).isVisible();
        Assertions.assertThat(Walker.misfits(page)).isEmpty();
    }

    private void echoesAndFocus(Page page) {
        Walker.follow(page, "Ditch-side stack");
        var weight = page.getByLabel("Weight of a bale");
        weight.fill("1,300");
        weight.press("Tab");
        assertThat(page.getByText("590 kg")).isVisible();
        page.navigate(house.begin());
        page.keyboard().press("Tab");
        assertThat(page.getByText("Skip to the page")).isFocused();
    }
}
