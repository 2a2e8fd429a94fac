package haywright.walk;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.AriaRole;
import com.microsoft.playwright.options.FilePayload;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.regex.Pattern;
import org.assertj.core.api.Assertions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

/** A laboratory's sheet typed, erred on, corrected and changed, and one brought in from a file. */
class ReadItIT {
    @RegisterExtension
    private static final Walker walker = new Walker();

    @RegisterExtension
    private static final House house = new House();

    @Test
    void withoutScriptsOnAPhone() {
        var page = walker.page(360, 740, false);
        walk(page, "Willow Fork");
        Walker.leave(page);
    }

    @Test
    void withScriptsAtADesk() {
        var page = walker.page(1280, 900, true);
        walk(page, "Sagehen Ranch");
        walker.nothingWasComplainedAbout();
        Walker.leave(page);
    }

    private void walk(Page page, String name) {
        page.navigate(house.begin());
        page.getByLabel("Ranch name").fill(name);
        press(page, "Add the ranch");
        assertThat(page.getByRole(
                        AriaRole.HEADING,
                        new Page.GetByRoleOptions().setName(name).setLevel(1)))
                .isVisible();
        var ranch = page.url().replaceAll("(/ranch/[^/?]*).*", "$1");
        page.navigate(ranch + "/lots/new/weighed");
        page.locator("[name=name]").fill("Oat stack");
        page.locator("[name=feedClass]").selectOption("cereal_hay");
        page.locator("[name=mass]").fill("120");
        page.locator("[name=storage]").selectOption("tarped");
        page.locator("[name=replacementPrice]").fill("150");
        press(page, "Save the lot");
        assertThat(page.getByText("Lot added: Oat stack")).isVisible();

        page.navigate(ranch + "/reports");
        assertThat(page.getByText("Nitrate not known")).isVisible();
        isFit(page);
        Walker.push(page.getByRole(AriaRole.LINK, new Page.GetByRoleOptions().setName("Type its report")));
        isFit(page);

        // err: columns swapped, a slip of the point, a day that is none
        box(page, "Reported on").fill("Nov 31, 2026");
        page.getByLabel("cored by a plan").press("Space");
        box(page, "Dry matter (DM)").fill("88");
        box(page, "Crude protein (CP), As received").fill("10");
        box(page, "Crude protein (CP), Dry matter").fill("8.8");
        box(page, "Acid detergent fiber (ADF), Dry matter").fill("38");
        press(page, "Check and save");
        assertThat(page).hasTitle(Pattern.compile("^Error: "));
        assertThat(page.locator("#problems")).containsText("there is no such day");
        assertThat(page.locator("#problems")).containsText("Are the two columns swapped?");
        assertThat(box(page, "Crude protein (CP), Dry matter")).hasValue("8.8");
        isFit(page);

        // go away and come back: nothing typed is lost
        page.navigate(ranch + "/reports");
        Walker.push(page.getByRole(AriaRole.LINK, new Page.GetByRoleOptions().setName("Type its report")));
        box(page, "Reported on").fill("Oct 30, 2026");
        box(page, "Crude protein (CP), As received").fill("8.8");
        box(page, "Crude protein (CP), Dry matter").fill("100");
        press(page, "Check and save");
        assertThat(page.locator("#problems")).isFocused();
        box(page, "Crude protein (CP), As received").fill("88");
        press(page, "Check and save");
        assertThat(page.locator("#problems")).isFocused();
        assertThat(page.locator("#problems")).containsText("Is it 10 %?");
        box(page, "Crude protein (CP), As received").fill("8.8");
        box(page, "Crude protein (CP), Dry matter").fill("10");
        box(page, "Nitrate nitrogen (NO3-N), Dry matter").fill("2100");
        press(page, "Check and save");
        assertThat(page.getByText("Saved.")).isVisible();
        assertThat(printedProtein(page)).containsText("10");
        assertThat(page.getByText("The strictest source says")).isVisible();
        isFit(page);

        // change one protein: the lot changes
        Walker.push(page.getByRole(AriaRole.LINK, new Page.GetByRoleOptions().setName(Pattern.compile("^Change "))));
        box(page, "Crude protein (CP), As received").fill("");
        box(page, "Crude protein (CP), Dry matter").fill("7.5");
        press(page, "Check and save");
        assertThat(printedProtein(page)).containsText("7.5");
        page.waitForLoadState(); // so that nothing is asked of it while it is down
        house.restart(page);
        page.reload();
        assertThat(printedProtein(page)).containsText("7.5");

        // a file of another laboratory, with semicolons, decimal commas and a name in Latin-1
        page.navigate(ranch + "/reports/bring");
        isFit(page);
        page.locator("#f-file")
                .setInputFiles(new FilePayload(
                        "result.csv",
                        "text/csv",
                        "Laboratory;Sample;DM;CP DM;Éclat\nDécharge;W-4;88,0;9,1;3\n"
                                .getBytes(StandardCharsets.ISO_8859_1)));
        press(page, "Read it");
        assertThat(page.getByText("1 sample understood")).isVisible();
        assertThat(page.locator(".untaken")).containsText("Éclat");
        isFit(page);
        press(page, "Look it over in the form");
        assertThat(page.locator("#problems")).containsText("No lot was chosen");
        page.getByLabel("Which lot is W-4 of?").selectOption("Oat stack");
        press(page, "Look it over in the form");
        assertThat(box(page, "Laboratory")).hasValue("Décharge");
        assertThat(box(page, "Crude protein (CP), Dry matter")).hasValue("9.1");
        page.getByLabel("not known").press("Space");
        box(page, "Reported on").fill("Nov 10, 2026");
        press(page, "Check and save");
        assertThat(printedProtein(page)).containsText("9.1");
        assertThat(page.getByText("Of two figures for the same thing both count"))
                .isVisible();
        // the file it came in stands beside what was understood
        Walker.push(
                page.getByRole(AriaRole.LINK, new Page.GetByRoleOptions().setName(Pattern.compile("^What was read"))));
        assertThat(page.locator("pre")).containsText("Décharge;W-4;88,0;9,1;3");
        isFit(page);
        // a PDF with two samples side by side: its commas are decimals by themselves; each is shown beside its line
        page.navigate(ranch + "/reports/bring");
        page.locator("#f-file")
                .setInputFiles(Path.of("../app/src/test/resources/haywright/app/exchange/reports/scanned.pdf"));
        press(page, "Read it");
        assertThat(page.locator("#problems")).containsText("its pages are pictures");
        page.locator("#f-file")
                .setInputFiles(Path.of("../app/src/test/resources/haywright/app/exchange/reports/layout-c.pdf"));
        press(page, "Read it");
        assertThat(page.getByText("2 samples understood")).isVisible();
        isFit(page);
        page.navigate(ranch + "/reports/names");
        isFit(page);
        page.navigate(ranch + "/reports/book?q=barley");
        isFit(page);
    }

    private static void isFit(Page page) {
        page.waitForLoadState(); // the style sheet is there
        Assertions.assertThat(Walker.misfits(page)).isEmpty();
        if (page.viewportSize().width > 1000) { // axe needs scripts
            Assertions.assertThat(Walker.barriers(page)).isEmpty();
        }
    }

    private static Locator box(Page page, String label) {
        return page.getByRole(AriaRole.TEXTBOX, new Page.GetByRoleOptions().setName(label))
                .first();
    }

    /** The first of those whose name begins so: each sample has one. */
    private static void press(Page page, String button) {
        Walker.push(page.locator("#main")
                .getByRole(AriaRole.BUTTON, new Locator.GetByRoleOptions().setName(button))
                .first());
    }

    /** What the sheets print of protein, beside the book's and what is used. */
    private static Locator printedProtein(Page page) {
        return page.locator(".made.sides tbody:has(th:has-text('(CP)')) [data-is=printed]")
                .first();
    }
}
