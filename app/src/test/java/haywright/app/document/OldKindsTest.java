package haywright.app.document;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.node.ObjectNode;
import haywright.forage.FeedClass;
import haywright.forage.lab.Tested;
import java.nio.charset.StandardCharsets;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Documents written before kinds, stages and methods of single figures were added, as they were written then. */
class OldKindsTest {
    private static final UUID LOT = UUID.fromString("7e000000-0000-4000-8000-000000000201");
    private static final UUID REPORT = UUID.fromString("7e000000-0000-4000-8000-000000000301");

    private final RanchDocument documents = new RanchDocument();

    private ObjectNode demo() {
        return documents.tree(TinLantern.ranch());
    }

    private haywright.ranch.Ranch read(ObjectNode tree) {
        return documents.read(tree.toString().getBytes(StandardCharsets.UTF_8));
    }

    /** Every kind and row that a lot could name before keeps its name and its row. */
    @ParameterizedTest
    @CsvSource({
        "legume_hay,C154",
        "legume_hay,''",
        "grass_hay,C161",
        "mixed_hay,''",
        "cereal_hay,C158",
        "straw,C012",
        "crop_residue,C163",
        "crop_residue,''",
        "corn_silage,C055",
        "legume_silage,C036",
        "cereal_silage,C165",
        "pasture,''",
        "pasture,C160",
        "grain,C062",
        "protein_meal,C065",
        "distillers_grains,C068",
        "byproduct_protein,C131",
        "byproduct_energy,C043",
        "mineral,C107",
        "npn,C180"
    })
    void aLotOfAnOldKindStillOpens(String kind, String row) {
        var tree = demo();
        ((ObjectNode) tree.at("/lots/" + LOT)).put("feed_class", kind).put("book_row", row);
        var lot = read(tree).lots().get(LOT);
        assertThat(lot.feedClass().id()).isEqualTo(kind);
        assertThat(lot.bookRow()).isEqualTo(row);
    }

    @ParameterizedTest
    @CsvSource({"cake", "tub"})
    void aNewKindComesBackAsWritten(String kind) {
        var tree = demo();
        ((ObjectNode) tree.at("/lots/" + LOT)).put("feed_class", kind).put("book_row", "");
        var ranch = read(tree);
        assertThat(ranch.lots().get(LOT).feedClass())
                .isEqualTo(FeedClass.valueOf(kind.toUpperCase(java.util.Locale.ROOT)));
        assertThat(read(documents.tree(ranch))).isEqualTo(ranch);
    }

    /** A figure without a method of its own is measured as its report was; one with it comes back with it. */
    @Test
    void aFigureWithoutAMethodOpensAndOneWithItComesBack() {
        var tree = demo();
        var report = (ObjectNode) tree.at("/reports/" + REPORT);
        assertThat(report.at("/readings/0").has("method")).isFalse();
        ((ObjectNode) report.at("/readings/0")).put("method", "nir");
        var ranch = read(tree);
        var readings = ranch.reports().get(REPORT).readings();
        assertThat(readings.get(0).method()).isEqualTo(Tested.Method.NIR);
        assertThat(readings.get(1).method()).isNull();
        assertThat(read(documents.tree(ranch))).isEqualTo(ranch);
    }
}
