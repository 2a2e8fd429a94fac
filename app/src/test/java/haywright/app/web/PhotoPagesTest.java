package haywright.app.web;

import static org.assertj.core.api.Assertions.assertThat;

import haywright.app.exchange.image.Pictures;
import haywright.ranch.Attachment;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.IntStream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

/** Photos of a lot and of a report's sheet: kept, shown, taken away, and never in the way of the report's own file. */
class PhotoPagesTest {
    @RegisterExtension
    private final OneRanch ranch = new OneRanch();

    private UUID lot;

    @BeforeEach
    void start() {
        lot = UUID.fromString(ranch.weighedLot("Ditch-side stack", "grass_hay"));
    }

    private RawClient.Answer upload(UUID about, byte[] file) {
        var path = ranch.path() + "photos/" + about;
        return ranch.client().upload(ranch.get("photos/" + about), path, "IMG_2031.jpg", file);
    }

    private List<Attachment> kept() {
        return List.copyOf(ranch.kept().attachments().values());
    }

    @Test
    void aPhotoIsKeptShownAndTakenAwayAndCanBeTakenBack() {
        assertThat(upload(lot, Pictures.fromPhone(600, 400)).status()).isEqualTo(303);
        assertThat(kept()).singleElement().satisfies(one -> {
            assertThat(one.about()).isEqualTo(lot);
            assertThat(one.name()).isEqualTo("IMG_2031.jpg");
        });
        var at = "photos/" + lot + "/" + kept().get(0).id();
        var shown = ranch.get(at);
        assertThat(shown.status()).isEqualTo(200);
        assertThat(shown.header("Content-Type")).isEqualTo("image/jpeg");
        assertThat(shown.body()).doesNotContain("Exif", "42.87");
        assertThat(ranch.get("lots/" + lot).body())
                .contains("src=\"" + ranch.path() + at + "\"", "alt=\"IMG_2031.jpg\"");
        assertThat(ranch.send("photos/" + lot, at + "/delete", Map.of()).status())
                .isEqualTo(303);
        assertThat(kept()).isEmpty();
        assertThat(ranch.get(at).status()).isEqualTo(404);
    }

    @Test
    void whatIsNoPictureIsSaidBesideTheBox() {
        var refused = upload(lot, "no picture".getBytes(StandardCharsets.UTF_8));
        assertThat(refused.status()).isEqualTo(422);
        assertThat(refused.body()).contains("id=\"p-file\"", "IMG_2031.jpg");
        assertThat(kept()).isEmpty();
        assertThat(ranch.get("photos/" + UUID.randomUUID()).status()).isEqualTo(404);
    }

    @Test
    void twelveAreKeptOfOneLotAndTheThirteenthIsRefused() {
        IntStream.range(1, 13)
                .forEach(i -> assertThat(
                                upload(lot, Pictures.plain("png", 10 * i, 20)).status())
                        .isEqualTo(303));
        assertThat(upload(lot, Pictures.plain("png", 5, 5)).status()).isEqualTo(422);
        assertThat(kept()).hasSize(12);
    }

    @Test
    void whatIsSentTwiceFromOnePageIsKeptOnce() {
        var page = ranch.get("photos/" + lot);
        var file = Pictures.plain("jpg", 60, 40);
        var first = ranch.client().upload(page, ranch.path() + "photos/" + lot, "a.jpg", file);
        var second = ranch.client().upload(page, ranch.path() + "photos/" + lot, "a.jpg", file);
        assertThat(second.header("Location")).isEqualTo(first.header("Location"));
        assertThat(kept()).hasSize(1);
    }

    /** The file that a report was read from and a photo of its sheet are two things. */
    @Test
    void aReportsPhotoIsNotTheFileItWasReadFrom() {
        ranch.send("reports/new/" + lot, Map.of("laboratory", "Tin Valley", "howSampled", "plan", "dry-cp", "10"));
        var report = ranch.kept().reports().keySet().iterator().next();
        assertThat(upload(report, Pictures.plain("jpg", 60, 40)).status()).isEqualTo(303);
        assertThat(ranch.get("reports/" + report).body()).contains("alt=\"IMG_2031.jpg\"");
        assertThat(ranch.get("reports/" + report + "/original").status()).isEqualTo(404);
    }

    @Test
    void theyGoWithTheLot() {
        upload(lot, Pictures.plain("jpg", 60, 40));
        assertThat(ranch.send("lots/" + lot + "/delete", Map.of()).status()).isEqualTo(303);
        assertThat(kept()).isEmpty();
    }
}
