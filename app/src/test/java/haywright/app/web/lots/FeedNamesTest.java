package haywright.app.web.lots;

import static org.assertj.core.api.Assertions.assertThat;

import haywright.forage.FeedClass;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Names by which feeds are bought and sold: words of the trade, no source. */
class FeedNamesTest {
    @ParameterizedTest
    @CsvSource({
        "Corn, GRAIN",
        "cracked corn, GRAIN",
        "Rolled barley, GRAIN",
        "oats, GRAIN",
        "DDGS, DISTILLERS_GRAINS",
        "dried distillers grains, DISTILLERS_GRAINS",
        "Cake 20%, CAKE",
        "20 % cubes, CAKE",
        "38% range cubes, CAKE",
        "Soybean meal 48, PROTEIN_MEAL",
        "soybean hulls, BYPRODUCT_ENERGY",
        "wheat midds, BYPRODUCT_ENERGY",
        "30% protein tubs, TUB",
        "Winter mineral, MINERAL",
        "alfalfa, LEGUME_HAY",
        "Good alfalfa hay, LEGUME_HAY",
        "brome hay, GRASS_HAY",
        "oat hay, CEREAL_HAY",
        "Wheat straw, STRAW",
        "corn stalks, CROP_RESIDUE",
        "corn silage, CORN_SILAGE",
        "corn gluten feed, BYPRODUCT_ENERGY"
    })
    void aFeedIsKnownByItsName(String typed, FeedClass kind) {
        assertThat(FeedNames.meant(typed))
                .hasValueSatisfying(meant -> assertThat(meant.kind()).isEqualTo(kind));
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "20%", "Joe’s special", "the good stuff"})
    void whatNoNameTellsIsAsked(String typed) {
        assertThat(FeedNames.meant(typed)).isEmpty();
    }
}
