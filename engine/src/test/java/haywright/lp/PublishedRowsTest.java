package haywright.lp;

import static org.assertj.core.api.Assertions.assertThat;

import haywright.workings.PublishedTable;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Every published row is asserted, or listed as not yet with its reason. */
class PublishedRowsTest {
    @Test
    void noPublishedRowIsForgotten() {
        var notYet = PublishedTable.read(Published.class, "/not-yet/optimization.csv")
                .rows();
        assertThat(notYet).allSatisfy(r -> assertThat(r.text("reason")).isNotBlank());
        List<String> accounted =
                new ArrayList<>(notYet.stream().map(r -> r.text("id")).toList());
        accounted.addAll(WorkedProgramsTest.IDS);
        accounted.addAll(DualsAndRangesTest.IDS);
        accounted.addAll(ConflictTest.IDS);
        accounted.addAll(WholeNumbersTest.IDS);
        accounted.addAll(CurvedRowsTest.IDS);
        // The squares belong to the room ration.
        assertThat(accounted)
                .containsExactlyInAnyOrderElementsOf(Published.WORKED.rows().stream()
                        .filter(r -> !r.text("kind").equals("pearson"))
                        .map(r -> r.text("id"))
                        .toList());
    }
}
