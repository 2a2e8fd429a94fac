package haywright.walk;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;

import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.AriaRole;
import java.util.List;
import java.util.regex.Pattern;
import org.assertj.core.api.Assertions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

/**
 * The road from a laboratory's report to a feed letter, with scripts off; and what stands in the demo's way. By keys alone:
 * with scripts off the browser driver's clicks can wait for a stillness that no timer ends.
 */
class RoadIT {
    @RegisterExtension
    private static final Walker walker = new Walker();

    @RegisterExtension
    private static final House house = new House();

    /** They are to get oat hay, which nobody tested: they are fed without it, and that is what they get once nobody asks for it. */
    @Test
    void theDemosHeifersAreFedWithoutTheHayThatWaitsForItsTest() {
        var page = walker.page(1280, 900, true);
        openDemo(page);
        follow(page, "Rations");
        follow(page, "Bred heifers");
        assertThat(page.getByText("You asked for Oat hay")).isVisible();
        double cost = dollars(page.locator(".say").first().textContent());
        page.navigate(page.url() + "/wishes");
        page.getByLabel("Feed at least 8 lb of Oat hay").press("Space");
        Walker.press(page, "Save and work it out");
        assertThat(page.getByText("You asked for Oat hay")).hasCount(0);
        Assertions.assertThat(dollars(page.locator(".say").first().textContent()))
                .isEqualTo(cost);

        // a mix by hand is judged by the same limits: what is no feed for them first, then the shortfalls
        follow(page, "Build a mix by hand");
        page.locator("details.quicker > summary").press("Enter");
        for (var box : page.locator("form.sheet input.amount").all()) {
            box.fill("");
        }
        page.getByLabel("Barley straw", new Page.GetByLabelOptions().setExact(true))
                .fill("10");
        Walker.press(page, "Judge it");
        assertThat(page.getByText("What this mix does")).isVisible();
        assertThat(page.locator("li.short").first()).containsText("Barley straw");
        assertThat(page.locator("li.short").nth(1)).containsText("short");
        Walker.leave(page);
    }

    @Test
    void sayingWhereTheRanchIsRaisesTheNeedAndIsSaidOnTheLetter() {
        var page = walker.page(1280, 900, true);
        openDemo(page);
        var ranch = page.url().replaceAll("(/ranch/[^/?]*).*", "$1");
        Assertions.assertThat(letter(page, ranch)).contains("usual cold at Valentine, NE");
        page.navigate(ranch + "/settings/weather");
        Walker.press(page, "Delete the weather");
        var mild = letter(page, ranch);
        Assertions.assertThat(mild).contains("Figured for mild weather.");
        page.locator("#f-town").fill("Valentin, NE");
        Walker.press(page, "Count the cold");
        assertThat(page.locator("#problems")).containsText("Valentine, NE");
        page.locator("[name=which][value='Valentine, NE']").press("Space");
        Walker.press(page, "Find its winters");
        assertThat(page.getByText("Saved.", new Page.GetByTextOptions().setExact(true)))
                .isVisible();
        var cold = letter(page, ranch);
        Assertions.assertThat(cold).contains("Figured for the usual cold").isNotEqualTo(mild);
        walker.nothingWasComplainedAbout();
        Walker.leave(page);
    }

    /** It may be there already: both tests walk in the same house. */
    private static void openDemo(Page page) {
        page.navigate(house.begin());
        var there = page.getByRole(AriaRole.LINK, new Page.GetByRoleOptions().setName("Tin Lantern Ranch"));
        if (there.count() > 0) {
            there.first().press("Enter");
        } else {
            Walker.press(page, "Open the demo");
        }
        assertThat(page.getByRole(
                        AriaRole.HEADING,
                        new Page.GetByRoleOptions().setName("Tin Lantern Ranch").setLevel(1)))
                .isVisible();
    }

    private static String letter(Page page, String ranch) {
        page.navigate(ranch + "/letter");
        follow(page, "Mature cows");
        return page.locator(".feed-letter").textContent();
    }

    @Test
    void aProteinTypedIntoANewRanchMovesBenchAndLetterAlike() {
        var page = walker.page(1280, 900, false);
        page.navigate(house.begin());
        page.getByLabel("Ranch name").fill("Cold Spring Ranch");
        Walker.press(page, "Add the ranch");
        var ranch = page.url().replaceAll("(/ranch/[^/?]*).*", "$1");

        page.navigate(ranch + "/lots/new/weighed");
        fill(page, List.of("name", "Meadow stack", "mass", "300", "replacementPrice", "120"));
        page.locator("[name=feedClass]").selectOption("grass_hay");
        page.locator("[name=storage]").selectOption("outside_on_ground");
        Walker.press(page, "Save the lot");
        page.navigate(ranch + "/feeds/new");
        fill(page, List.of("name", "Canola meal", "price", "380"));
        page.locator("[name=name]").press("Enter"); // sends no half sheet
        assertThat(page.locator("[name=price]")).hasValue("380");
        assertThat(page.locator("#problems")).hasCount(0);
        Walker.press(page, "Save the feed");
        page.navigate(ranch + "/herd/new/mature_cow");
        fill(page, List.of("name", "Cows", "head", "100", "weight", "1300", "conditionScore", "5"));
        Walker.press(page, "Save the group");
        assertThat(page.getByText("Saved.")).isVisible();

        page.navigate(ranch + "/reports");
        page.locator("a[href*='/reports/new/']").first().press("Enter");
        fill(page, List.of("one-dm", "90", "dry-cp", "5.4", "dry-adf", "40", "dry-ndf", "62", "dry-ca", "0.5"));
        fill(page, List.of("dry-p", "0.2", "reported", "Nov 20, 2026"));
        page.locator("[name=howSampled][value=plan]").press("Space");
        Walker.press(page, "Check and save");
        confirm(page, "Check and save");
        var lot = page.url();
        var poor = ration(page, ranch);
        Assertions.assertThat(poor.bench()).contains("Canola meal");
        Assertions.assertThat(poor.letter()).contains("Canola meal");

        page.navigate(lot);
        page.getByRole(AriaRole.LINK, new Page.GetByRoleOptions().setName(Pattern.compile("^Change the report")))
                .press("Enter");
        page.locator("[name=dry-cp]").fill("11.5");
        Walker.press(page, "Check and save");
        confirm(page, "Check and save");
        var rich = ration(page, ranch);
        Assertions.assertThat(rich.bench()).doesNotContain("Canola meal ");
        Assertions.assertThat(rich.letter()).doesNotContain("Canola meal");
        Walker.leave(page);
    }

    private record Fed(String bench, String letter) {}

    /** The table of the mix and the letter, as a person reads them. */
    private static Fed ration(Page page, String ranch) {
        page.navigate(ranch + "/bench");
        follow(page, "Cows");
        var mix = page.locator(".offer.picked").textContent();
        page.navigate(ranch + "/letter");
        follow(page, "Cows");
        return new Fed(mix, page.locator(".feed-letter").textContent());
    }

    /** Says yes to whatever is asked about, once. */
    private static void confirm(Page page, String button) {
        if (page.title().startsWith("Error:")) {
            Assertions.assertThat(page.locator(".problem", new Page.LocatorOptions().setHasText("Error:"))
                            .allTextContents())
                    .isEmpty();
            for (var box : page.locator("input[name=confirm]").all()) {
                box.press("Space");
            }
            Walker.press(page, button);
        }
        assertThat(page.getByText("Saved.")).isVisible();
    }

    private static void fill(Page page, List<String> namesAndValues) {
        for (int i = 0; i < namesAndValues.size(); i += 2) {
            page.locator("[name='" + namesAndValues.get(i) + "']").fill(namesAndValues.get(i + 1));
        }
    }

    private static void follow(Page page, String link) {
        page.getByRole(AriaRole.LINK, new Page.GetByRoleOptions().setName(link))
                .first()
                .press("Enter");
    }

    private static double dollars(String words) {
        return Double.parseDouble(words.replaceAll("(?s)^.*?\\$(\\d+\\.\\d\\d).*$", "$1"));
    }
}
