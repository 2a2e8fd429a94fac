package haywright.walk;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

/** The slider beside each pound of a mix: it says what its box says, or is not there. */
class ByHandIT {
    @RegisterExtension
    private static final Walker walker = new Walker();

    @RegisterExtension
    private static final House house = new House();

    @Test
    void theSliderSaysWhatItsBoxSays() {
        var page = walker.page(1280, 900, true);
        page.navigate(house.begin());
        Walker.button(page, "Open the demo").click();
        page.navigate(page.url().replaceAll("/[a-z]*$", "/bench/7e000000-0000-4000-8000-000000000101/hand"));
        var box = page.locator(".slides input.amount").first();
        var slide = page.locator(".slides input.slide").first();
        box.fill("12.5");
        assertThat(slide).hasValue("12.5");
        for (var other : new String[] {"10 kg", "1,000", "60", "-3"}) {
            box.fill(other);
            assertThat(slide).isHidden();
        }
        box.fill("");
        assertThat(slide).isVisible();
        slide.fill("7.5");
        assertThat(box).hasValue("7.5");
        walker.nothingWasComplainedAbout();
        Walker.leave(page);
    }
}
