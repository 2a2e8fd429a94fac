package haywright.sampling;

import static org.assertj.core.api.Assertions.assertThat;

import haywright.workings.Caution;
import haywright.workings.PublishedTable;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** The published methods and cautions, row by row, against what the plans of every material say. */
class PublishedMethodsTest {
    private static final PublishedTable METHODS =
            PublishedTable.read(PublishedMethodsTest.class, "published_methods.csv");
    private static final PublishedTable SAFETY =
            PublishedTable.read(PublishedMethodsTest.class, "published_safety.csv");
    private static final PublishedTable SHIPPED = PublishedTable.read(Material.class, "materials.csv");

    private static final Map<String, Function<Method, String>> COLUMNS = Map.ofEntries(
            Map.entry("lot_definition", Method::lot),
            Map.entry("n_units_rule", Method::count),
            Map.entry("n_units_statistical", Method::statistical),
            Map.entry("increments_per_unit", Method::increments),
            Map.entry("tool", Method::tool),
            Map.entry("tool_diameter", Method::bore),
            Map.entry("tool_length_depth", Method::depth),
            Map.entry("entry_point_angle", Method::entry),
            Map.entry("mix_and_split", Method::split),
            Map.entry("final_mass_for_lab", Method::mass),
            Map.entry("package", Method::packing),
            Map.entry("storage", Method::storage),
            Map.entry("timing", Method::timing),
            Map.entry("do", Method::doThis),
            Map.entry("do_not", Method::doNot),
            Map.entry("safety", Method::safety));

    /** What a source offers and would put somebody at a standing face or into a bag: reworded or left out. */
    private static final Set<String> LEFT_OUT = Set.of(
            "M09 n_units_rule", "M09 tool", "M09 tool_diameter", "M09 tool_length_depth", "M10 entry_point_angle");

    @TestFactory
    List<DynamicTest> everyMethodIsSaidAsPublishedOrLeftOutWithItsReason() {
        return METHODS.rows().stream()
                .map(row -> DynamicTest.dynamicTest(row.text("id"), () -> isSaid(row)))
                .toList();
    }

    private static void isSaid(PublishedTable.Row row) {
        var material = Arrays.stream(Material.values())
                .filter(m -> m != Material.BAGGED_FEED)
                .filter(m -> SHIPPED.row("material", m.name()).text("id").equals(row.text("id")))
                .findFirst()
                .orElseThrow();
        for (var column : COLUMNS.entrySet()) {
            var published = row.text(column.getKey());
            var said = column.getValue().apply(material.method());
            if (LEFT_OUT.contains(row.text("id") + " " + column.getKey())) {
                assertThat(said).isNotEqualTo(published);
                assertThat(material.method().leftOut()).isNotBlank();
            } else if (Set.of("n/a", "none", "").contains(published)) {
                assertThat(said).isEmpty();
            } else if (published.startsWith("as M01")) {
                // "as M01, drill preferred", "as M01; split the lot if …": the first row and what is added to it
                var first = column.getValue().apply(Material.SMALL_SQUARE_BALE.method());
                assertThat(said).as(column.getKey()).startsWith(first);
                assertThat(said)
                        .as(column.getKey())
                        .contains(published
                                .replaceFirst("as M01( plus|[,;])?", "")
                                .strip());
            } else {
                assertThat(said).as(column.getKey()).isEqualTo(published);
            }
        }
    }

    @Test
    void everyCautionStandsWhereItsActIsAndSaysWhatItsSourceSays() {
        var said = new HashSet<String>();
        for (var material : Material.values()) {
            Safety.of(material).stream().map(Caution::words).forEach(said::add);
        }
        assertThat(said).hasSize(SAFETY.rows().size());
        for (var row : SAFETY.rows()) {
            var words = (row.text("rule")
                    + row.some("value")
                            .map(v -> ": " + v + " " + row.text("unit"))
                            .orElse(""));
            assertThat(said)
                    .anyMatch(w -> w.toLowerCase(java.util.Locale.ROOT)
                            .equals((row.text("hazard") + ": " + words + ".").toLowerCase(java.util.Locale.ROOT)));
        }
    }

    @Test
    void nobodyIsSentToAStandingFaceIntoABinOrIntoASilo() {
        for (var material : Material.values()) {
            var method = material.method();
            assertThat(method.tool() + method.depth() + method.entry() + method.count())
                    .doesNotContain("face corer", "grid", "spots 8")
                    .doesNotContainPattern("(?i)climb|enter the|standing face");
        }
        for (var material : List.of(
                Material.BUNKER_OR_PILE, Material.SILAGE_BAG, Material.UPRIGHT_SILO, Material.GRAIN_OR_BYPRODUCT)) {
            assertThat(SamplingPlan.of(Subject.of(material, 0), Aim.USUAL).left())
                    .as(material.words())
                    .isNotEmpty();
        }
    }
}
