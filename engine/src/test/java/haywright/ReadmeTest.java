package haywright;

import static org.assertj.core.api.Assertions.assertThat;

import haywright.cattle.Animal;
import haywright.cattle.LiveWeight;
import haywright.cattle.RequirementSystem;
import haywright.cattle.need.Requirement;
import haywright.diet.DietOptions;
import haywright.diet.Feed;
import haywright.forage.Analyte;
import haywright.forage.Basis;
import haywright.forage.FeedClass;
import haywright.forage.book.FeedBook;
import haywright.forage.lab.Reading;
import haywright.forage.lot.LotComposition;
import haywright.quantity.Unit;
import haywright.ration.LeastCostRation;
import haywright.ration.PricedFeed;
import haywright.ration.Ration;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/** The Java in README.md is cut from here, so that it compiles and runs. */
class ReadmeTest {
    private static final Path README = Path.of("..", "README.md");
    private static final Path HERE = Path.of("src", "test", "java", "haywright", "ReadmeTest.java");

    @Test
    void theJavaInTheReadmeGivesARation() {
        // README begins
        var figures = List.of(
                new Reading(Analyte.CP, 8.2, Unit.PERCENT, Basis.DRY_MATTER),
                new Reading(Analyte.ADF, 40, Unit.PERCENT, Basis.DRY_MATTER));
        var kind = FeedClass.GRASS_HAY;
        var hay = LotComposition.ofTag(kind, FeedBook.published().usual(kind), "my laboratory", figures);
        var feed = new Feed("hay", "Meadow hay", kind, hay.composition(), false);
        var cow = new Requirement(Animal.matureCow(LiveWeight.full(590)), RequirementSystem.NRC_1996);
        var offered = List.of(new PricedFeed(feed, 0.165, 89, 15)); // dollars a kg as fed, % dry matter, % lost
        var answer = new LeastCostRation(offered, cow, DietOptions.USUAL).solve();
        // README ends
        assertThat(answer).isInstanceOfSatisfying(Ration.class, ration -> {
            assertThat(ration.portions()).hasSize(1);
            assertThat(ration.cost()).isPositive();
        });
    }

    @Test
    void theReadmeShowsThatJava() throws IOException {
        var shown = Files.readString(README).split("```java\n", 2)[1].split("```", 2)[0];
        var cut = Files.readString(HERE).split("// README begins\n", 2)[1].split(" *// README ends", 2)[0];
        assertThat(shown.strip()).isEqualTo(cut.stripTrailing().stripIndent().strip());
        assertThat(shown.lines().collect(Collectors.toList())).hasSizeLessThanOrEqualTo(12);
    }
}
