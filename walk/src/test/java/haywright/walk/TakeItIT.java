package haywright.walk;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;

import com.microsoft.playwright.Download;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.Route;
import com.microsoft.playwright.options.AriaRole;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.regex.Pattern;
import org.assertj.core.api.Assertions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.junit.jupiter.api.io.TempDir;

/** From a stack to a sheet, out to the phone, and back as a line of text, on a ranch that is nobody's demo. */
class TakeItIT {
    @RegisterExtension
    private static final Walker walker = new Walker();

    @RegisterExtension
    private static final House house = new House();

    @TempDir
    private Path downloads;

    @Test
    void aSheetGoesOutToAPhoneAndComesBack() throws IOException {
        var page = walker.page(1280, 900, true);
        aRanchWithAStack(page);
        plan(page);
        var phone = carriedAway(page);
        var line = filledIn(phone);
        comesBack(page, line);
        weightsComeBackInTheFile(page);
        walker.nothingWasComplainedAbout();
        Walker.leave(page);
    }

    private static void aRanchWithAStack(Page page) {
        page.navigate(house.begin());
        page.getByLabel("Ranch name").fill("Alkali Bench");
        Walker.button(page, "Add the ranch").click();
        assertThat(page).hasURL(Pattern.compile("/ranch/.*/$"));
        page.navigate(page.url() + "lots/new/bales");
        page.getByLabel("Lot name").fill("Creek stack");
        page.getByLabel("Kind of feed").selectOption("grass_hay");
        page.getByLabel("large square bales").check();
        page.getByLabel("How many bales").fill("96");
        page.getByLabel("Weight of a bale").fill("1300");
        Walker.unfold(page, "If stacked");
        page.getByLabel("Rows").fill("4");
        page.getByLabel("Bales in a row").fill("12");
        page.getByLabel("Tiers high").fill("2");
        page.getByLabel("Storage").selectOption("tarped");
        page.getByLabel("Price to replace a ton").fill("170");
        Walker.button(page, "Save the lot").click();
        assertThat(page.getByText("Lot added: Creek stack")).isVisible();
    }

    private static void plan(Page page) {
        page.locator("#trail a[href*='/take']").click();
        assertThat(page).hasURL(Pattern.compile("/take$"));
        Walker.link(page, "Creek stack").click();
        assertThat(page.getByText("Take 20 bales, one core each.")).isVisible();
        assertThat(page.locator("figure svg")).isVisible();

        // err, and correct
        page.locator("#change > summary").click();
        page.getByLabel("Accuracy, plus or minus").fill("half");
        Walker.button(page, "Show the plan").click();
        assertThat(page).hasTitle(Pattern.compile("^Error: "));
        assertThat(page.getByLabel("Accuracy, plus or minus")).hasValue("half");
        page.getByLabel("Accuracy, plus or minus").fill("0.8");
        page.getByLabel("Rule for how many").selectOption("ten_percent");
        page.getByLabel("Can’t reach the back").check();
        Walker.button(page, "Show the plan").click();
        assertThat(page.getByText("Take 10 bales, 2 cores each.")).isVisible();
        Walker.button(page, "Make the field sheet").click();
        assertThat(page.getByText("Field sheet made: Creek stack")).isVisible();
        Assertions.assertThat(Walker.barriers(page)).isEmpty();
        Assertions.assertThat(Walker.misfits(page)).isEmpty();
        page.setViewportSize(320, 640);
        Assertions.assertThat(Walker.misfits(page)).isEmpty();
        page.setViewportSize(1280, 900);
    }

    /** The page as the phone has it, at an address of its own. */
    private Page carriedAway(Page page) throws IOException {
        Download download =
                page.waitForDownload(() -> Walker.link(page, "Save for a phone").click());
        var file = downloads.resolve("sheet.html");
        download.saveAs(file);
        var html = Files.readString(file);
        Assertions.assertThat(html).contains("Butt ends only");
        var silent = walker.page(360, 740, false);
        silent.setContent(html);
        assertThat(silent.getByText("Scripts are off")).isVisible();
        assertThat(silent.getByRole(AriaRole.CHECKBOX)).hasCount(10);
        Walker.leave(silent);

        var phone = walker.page(360, 740, true);
        phone.route(
                "http://127.0.0.1:9/sheet.html",
                route -> route.fulfill(new Route.FulfillOptions()
                        .setContentType("text/html; charset=utf-8")
                        .setBody(html)));
        phone.navigate("http://127.0.0.1:9/sheet.html");
        Assertions.assertThat(Walker.barriers(phone)).isEmpty();
        // the first tick is on the screen that comes up, before anything is scrolled or unfolded
        var first = phone.getByRole(AriaRole.CHECKBOX).first().boundingBox();
        Assertions.assertThat(first.y + first.height).isLessThan(740);
        return phone;
    }

    private String filledIn(Page phone) throws IOException {
        for (int i = 0; i < 9; i++) {
            phone.getByRole(AriaRole.CHECKBOX).nth(i).check();
        }
        phone.getByLabel("Cores").nth(4).fill("1");
        phone.getByLabel("Who took it").fill("Kit");
        phone.getByLabel("Day").fill("2026-11-24");
        phone.getByLabel("Bales weighed, lb").fill("1310 1288\n1295");
        assertThat(phone.getByText("Saved on this phone, not given back yet. 9 of 10 taken."))
                .isVisible();

        // closed and opened again it knows every tap
        phone.reload();
        assertThat(phone.getByText("Saved on this phone, not given back yet. 9 of 10 taken."))
                .isVisible();

        assertThat(phone.getByLabel("Bales weighed, lb")).hasValue("1310 1288\n1295");

        // a number that cannot be is said at its box, and there is no line until it is put right
        phone.getByLabel("Cores").nth(3).fill("500");
        assertThat(phone.getByText("Number 4: enter a whole number from 0 to 35."))
                .isVisible();
        assertThat(phone.locator("#copy")).isDisabled();
        phone.getByLabel("Cores").nth(3).fill("2");
        phone.getByLabel("What was different").fill("bale 4 frozen in");
        assertThat(phone.getByText("In the line the name is KIT, and what was different"))
                .isVisible();
        assertThat(phone.getByRole(AriaRole.CHECKBOX).nth(8)).isChecked();
        assertThat(phone.getByRole(AriaRole.CHECKBOX).nth(9)).not().isChecked();
        // weights do not fit in the line: they go back in the file, in words
        var file = downloads.resolve("back.txt");
        phone.waitForDownload(() -> phone.locator("#file").click()).saveAs(file);
        Assertions.assertThat(Files.readString(file))
                .contains("Differed: bale 4 frozen in; Bales weighed, lb: 1310 1288 1295\n");
        var line = phone.locator("#line").textContent();
        Assertions.assertThat(line).matches("S[0-9A-Z]{5}-261124-KIT-2222122220[0-9][A-Z]");
        Walker.leave(phone);
        return line;
    }

    private static void comesBack(Page page, String line) {
        page.locator("#trail a[href*='/take']").click();
        var box = page.getByLabel("The line, or the whole file");
        box.fill(line.replace("2222122220", "2222212220"));
        Walker.button(page, "Read the line").click();
        assertThat(page.getByText("a character was changed or two were swapped").first())
                .isVisible();
        box.fill(line);
        Walker.button(page, "Read the line").click();
        assertThat(page.getByText("17 cores from 9 bales, of 20 from 10 planned."))
                .isVisible();

        // the same line twice changes nothing; another for the same sheet is refused
        page.locator("#trail a[href*='/take']").click();
        box.fill(line);
        Walker.button(page, "Read the line").click();
        assertThat(page.getByText("17 cores from 9 bales")).isVisible();
    }

    private void weightsComeBackInTheFile(Page page) {
        page.locator("#trail a[href*='/take']").click();
        page.locator("#f-file").setInputFiles(downloads.resolve("back.txt"));
        Walker.button(page, "Read the file").click();
        assertThat(page.getByLabel("What was different"))
                .hasValue("bale 4 frozen in; Bales weighed, lb: 1310 1288 1295");
    }
}
