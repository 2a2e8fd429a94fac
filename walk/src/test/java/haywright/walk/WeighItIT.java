package haywright.walk;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.Route;
import com.microsoft.playwright.options.AriaRole;
import org.assertj.core.api.Assertions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

/** The sheet for the scale on a phone: kept tap by tap, and back as a line that the page of the lot takes. */
class WeighItIT {
    @RegisterExtension
    private static final Walker walker = new Walker();

    @RegisterExtension
    private static final House house = new House();

    @Test
    void theScalesSheetComesBackFromAPhone() {
        var page = walker.page(1280, 900, true);
        openDemo(page);
        page.navigate(page.url().replaceAll("/[a-z]*$", "/lots"));
        Walker.unfold(page, "More on Meadow hay");
        page.getByRole(AriaRole.LINK, new Page.GetByRoleOptions().setName("Weigh Meadow hay"))
                .click();
        var weigh = page.url();
        var html = page.request().get(weigh + "/phone.html").text();

        var phone = walker.page(360, 740, true);
        phone.route(
                "http://127.0.0.1:9/sheet.html",
                route -> route.fulfill(new Route.FulfillOptions()
                        .setContentType("text/html; charset=utf-8")
                        .setBody(html)));
        phone.navigate("http://127.0.0.1:9/sheet.html");
        Assertions.assertThat(Walker.barriers(phone)).isEmpty();
        assertThat(phone.locator("#state")).containsText("Nothing entered yet, not given back yet. 0 of");
        var boxes = phone.locator("input[name=count]");
        boxes.nth(0).fill("1,080");
        boxes.nth(1).fill("a lot");
        assertThat(phone.locator("#line")).hasText("One of them is not a number.");
        assertThat(phone.locator("#copy")).isDisabled();
        boxes.nth(1).fill("1120");
        boxes.nth(2).fill("1100");
        boxes.nth(3).fill("1060");
        boxes.nth(4).fill("1140");
        assertThat(phone.locator("#state")).containsText("Saved on this phone, not given back yet. 5 of");
        phone.reload();
        assertThat(phone.locator("#state")).containsText("Saved on this phone, not given back yet. 5 of");
        assertThat(boxes.nth(0)).hasValue("1,080");
        phone.waitForDownload(() -> phone.locator("#file").click());
        assertThat(phone.locator("#state")).containsText("file saved at");
        var line = phone.locator("#line").textContent();
        Walker.leave(phone);

        page.navigate(weigh.replaceAll("/take/.*", "/take"));
        page.getByLabel("The line, or the whole file").fill(line);
        Walker.button(page, "Read the line").click();
        // 1,080 + 1,120 + 1,100 + 1,060 + 1,140 = 5,500 lb of five bales
        assertThat(page.locator("#main").getByText("1,100 lb").first()).isVisible();
        walker.nothingWasComplainedAbout();
        Walker.leave(page);
    }

    @Test
    void theWeekComesBackFromAPhone() {
        var page = walker.page(1280, 900, true);
        openDemo(page);
        page.navigate(page.url().replaceAll("/[a-z]*$", "/winter/week"));
        var week = page.url();
        var html = page.request().get(week + "/phone.html").text();

        var phone = walker.page(360, 740, true);
        phone.route(
                "http://127.0.0.1:9/week.html",
                route -> route.fulfill(new Route.FulfillOptions()
                        .setContentType("text/html; charset=utf-8")
                        .setBody(html)));
        phone.navigate("http://127.0.0.1:9/week.html");
        Assertions.assertThat(Walker.barriers(phone)).isEmpty();
        phone.locator("input[name=on]").fill("2026-11-24");
        phone.locator("summary").nth(0).click();
        Assertions.assertThat(phone.locator(".day").nth(0).textContent()).contains("Nov 24");
        var boxes = phone.locator("input[name=count]");
        boxes.nth(0).fill("7,100");
        boxes.nth(1).fill("about 7000");
        assertThat(phone.locator("#copy")).isDisabled();
        boxes.nth(1).fill("7055.5");
        boxes.nth(7).fill("5");
        phone.reload();
        assertThat(boxes.nth(1)).hasValue("7055.5");
        assertThat(boxes.nth(1)).isVisible();
        phone.waitForDownload(() -> phone.locator("#file").click());
        var line = phone.locator("#line").textContent();
        nextWeek(phone, boxes);
        Walker.leave(phone);

        page.locator("summary")
                .filter(new Locator.FilterOptions().setHasText("phone"))
                .first()
                .click();
        page.locator("input[name=line]").fill(line);
        Walker.button(page, "Read the line").click();
        assertThat(page.locator("input[value='7100 7055.5']")).isVisible();
        assertThat(page.locator("input[value='Nov 25, 2026']")).isVisible();
        walker.nothingWasComplainedAbout();
        Walker.leave(page);
    }

    /** Last week's figures under next week's first day would count the same feed twice. */
    private static void nextWeek(Page phone, Locator boxes) {
        var day = phone.locator("input[name=on]");
        day.fill("2026-12-01");
        assertThat(phone.locator("#copy")).isDisabled();
        phone.reload();
        assertThat(phone.locator("#copy")).isDisabled();
        phone.locator("#stay").click();
        assertThat(phone.locator("#line")).containsText("-261201-71000-70555-");
        day.fill("2026-12-02");
        phone.locator("#clear").click();
        assertThat(boxes.nth(0)).hasValue("");
        boxes.nth(0).fill("6900");
        assertThat(phone.locator("#line")).containsText("-261202-69000-");
        phone.locator("#new").click();
        assertThat(day).hasValue("2026-12-09");
        assertThat(boxes.nth(0)).hasValue("");
        assertThat(phone.locator("#copy")).isDisabled();
        phone.reload();
        assertThat(day).hasValue("2026-12-09");
        assertThat(boxes.nth(0)).hasValue("");
        Assertions.assertThat(Walker.barriers(phone)).isEmpty();
    }

    /** Whichever of the two comes second finds it there. */
    private static void openDemo(Page page) {
        page.navigate(house.begin());
        var first = Walker.button(page, "Open the demo");
        if (first.count() > 0) {
            first.click();
        } else {
            page.locator("a[href*='/ranch/']").first().click();
        }
    }
}
