package haywright.app.report.picture;

import static org.assertj.core.api.Assertions.assertThat;

import haywright.sampling.stock.Layout;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Whoever counts on a drawing counts every bale of a face, so every one is drawn. */
class StackDrawingTest {
    private static int count(String svg, String what) {
        return svg.split(what, -1).length - 1;
    }

    // 10 in front, 10 behind, 4 on each side; 4 corner bales are named by one face and shown gray on another.
    @Test
    void everyBaleOfAFaceIsDrawnItsCornersToo() {
        var stack = Layout.Block.open(4, 10, 1, 40, 1);
        var svg = new StackDrawing(stack, List.of(10)).svg();
        assertThat(count(svg, "<rect")).isEqualTo(28);
        assertThat(count(svg, "#d9d5cc")).isEqualTo(4);
        assertThat(svg).contains("Back, as you face it");
        // bale 10 is the right corner of the front: black there, gray with its number on the right side
        assertThat(count(svg, ">1</text>")).isEqualTo(2);
    }

    // 10 · (3 + 2 + 1) bales; each side shows 10 of each of the three tiers.
    @Test
    void bothSidesOfAPyramidShowItsTop() {
        var svg = new StackDrawing(new Layout.Pyramid(3, 3, 10, 60, 1), List.of(1)).svg();
        assertThat(count(svg, "<rect")).isEqualTo(60);
    }

    @Test
    void aPlaceIsNamedAsSeenFromWhereOneStands() {
        var stack = Layout.Block.open(4, 10, 1, 40, 1);
        var places = stack.places();
        assertThat(stack.words(places.get(37))).isEqualTo("back, 3rd from the left as you face it, tier 1");
        assertThat(stack.words(places.get(19))).isEqualTo("right side, 2nd from the left as you face it, tier 1");
        assertThat(stack.words(places.get(10))).isEqualTo("left side, 3rd from the left as you face it, tier 1");
        // 37 bales: the back row is three short, at its left end as one faces it
        var shorter = Layout.Block.open(4, 10, 1, 37, 1);
        assertThat(shorter.words(shorter.places().get(36))).startsWith("back, 1st from the left");
    }
}
