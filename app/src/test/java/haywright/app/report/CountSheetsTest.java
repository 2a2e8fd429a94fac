package haywright.app.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import haywright.app.document.TinLantern;
import haywright.cattle.herd.Group;
import haywright.ranch.Lot;
import haywright.ranch.Ranch;
import haywright.workings.Refused;
import java.io.IOException;
import java.time.LocalDate;
import java.util.stream.Stream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class CountSheetsTest {
    private static final Ranch DEMO = TinLantern.ranch();
    private static final LocalDate DAY = LocalDate.of(2026, 12, 1);

    static Stream<Lot> lots() {
        return DEMO.lots().values().stream();
    }

    static Stream<Group> groups() {
        return DEMO.groups().values().stream();
    }

    private static String text(Paper paper) throws IOException {
        try (var document = Loader.loadPDF(paper.pdf(complaint -> {}))) {
            assertThat(document.getNumberOfPages()).isEqualTo(1);
            return new PDFTextStripper().getText(document).replaceAll("[\\s\u00a0]+", " ");
        }
    }

    @ParameterizedTest
    @MethodSource("lots")
    void fiveToTenBalesAreNamedAndTheFiveThatMatterMarked(Lot lot) throws IOException {
        if (lot.stock().bales() == 0) {
            assertThatThrownBy(() -> new WeighSheet(DEMO, lot, DAY))
                    .isInstanceOf(Refused.class)
                    .hasMessageContaining("is not baled");
            return;
        }
        var sheet = new WeighSheet(DEMO, lot, DAY);
        assertThat(sheet.rows()).hasSize(10).filteredOn(WeighSheet.Row::first).hasSize(5);
        assertThat(sheet.rows()).extracting(WeighSheet.Row::where).doesNotHaveDuplicates();
        var text = text(sheet.paper(Paper.Size.LETTER));
        assertThat(text).contains(lot.name(), "power lines", "invented");
        for (var row : sheet.rows()) {
            assertThat(sheet.paper(Paper.Size.LETTER).xhtml()).contains("<td>" + row.where() + "</td>");
        }
    }

    @ParameterizedTest
    @MethodSource("groups")
    void asManyBoxesAsAreToBeScored(Group group) throws IOException {
        var sheet = new ScoreSheet(DEMO, group, DAY);
        var text = text(sheet.paper(Paper.Size.A4));
        assertThat(text).contains("Score " + sheet.toScore() + " of " + group.head(), "young ones", "invented");
        assertThat(sheet.paper(Paper.Size.A4).xhtml().split("class=\"cell\"", -1))
                .hasSize(sheet.toScore() + 1);
        assertThat(sheet.when().isEmpty()).isEqualTo(group.calving().isEmpty());
    }
}
