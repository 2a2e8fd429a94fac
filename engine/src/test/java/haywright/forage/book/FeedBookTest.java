package haywright.forage.book;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import haywright.forage.Analyte;
import haywright.forage.FeedClass;
import haywright.workings.Origin;
import haywright.workings.Refused;
import haywright.workings.Source;
import org.junit.jupiter.api.Test;

class FeedBookTest {
    private final FeedBook book = FeedBook.published();

    @Test
    void everyRowIsThereOnceWithItsSource() {
        assertThat(book.rows()).hasSize(156).extracting(FeedBook.Row::id).doesNotHaveDuplicates();
        assertThat(book.rows()).allSatisfy(row -> {
            assertThat(row.source().cite()).contains(row.id());
            assertThat(row.source().known()).isIn(Source.Known.READ, Source.Known.FROM_MEMORY, Source.Known.JUDGMENT);
            assertThat(row.address().isBlank())
                    .as(row.id())
                    .isEqualTo(row.source().known() != Source.Known.READ
                            || row.source().cite().contains("Feedstuffs 1989"));
        });
    }

    @Test
    void noRowHasAPartAboveItsWhole() {
        for (var row : book.rows()) {
            notAbove(row, Analyte.ADF, Analyte.NDF);
            notAbove(row, Analyte.LIGNIN, Analyte.ADF);
            notAbove(row, Analyte.ADICP, Analyte.NDICP);
            notAbove(row, Analyte.NDICP, Analyte.CP);
            notAbove(row, Analyte.NEG, Analyte.NEM);
        }
    }

    private static void notAbove(FeedBook.Row row, Analyte part, Analyte whole) {
        var of = row.composition();
        if (of.knows(part) && of.knows(whole)) {
            assertThat(of.value(part).getAsDouble())
                    .as("%s: %s in %s", row.id(), part, whole)
                    .isLessThanOrEqualTo(of.value(whole).getAsDouble());
        }
    }

    @Test
    void everyFigureIsPossibleAndInTheRangeOfItsClass() {
        for (var row : book.rows()) {
            row.composition().values().forEach((analyte, known) -> {
                boolean npn = row.feedClass() == FeedClass.NPN;
                if (!(npn && analyte == Analyte.CP)) {
                    assertThat(analyte.possible().holds(known.value()))
                            .as("%s %s %s", row.id(), analyte, known.value())
                            .isTrue();
                }
                analyte.usual(row.feedClass())
                        .filter(usual -> analyte != Analyte.DM || !row.basis().equals("as is"))
                        .ifPresent(usual -> assertThat(usual.holds(known.value()))
                                .as("%s %s %s in %s", row.id(), analyte, known.value(), usual)
                                .isTrue());
            });
        }
    }

    @Test
    void severalRowsOfOneFeedStayApart() {
        assertThat(book.search("barley straw")).extracting(FeedBook.Row::id).containsExactly("C002", "C012", "C164");
        assertThat(book.search("ALFALFA midbloom")).extracting(FeedBook.Row::id).containsExactly("C017", "C154");
        assertThat(book.search("unobtainium")).isEmpty();
        assertThat(book.search("DDGS"))
                .allMatch(r -> r.feedClass() == FeedClass.DISTILLERS_GRAINS)
                .hasSize(4);
    }

    @Test
    void theUsualRowOfAClassIsOfThatClassAndSaysWhy() {
        for (var feedClass : FeedClass.values()) {
            if (feedClass == FeedClass.MINERAL || feedClass == FeedClass.NPN || feedClass == FeedClass.TUB) {
                assertThat(book.usual(feedClass)).isEmpty();
                continue;
            }
            var row = book.usual(feedClass).orElseThrow();
            assertThat(row.feedClass()).isEqualTo(feedClass);
            assertThat(row.basisIsKnown()).isTrue();
            assertThat(book.whyUsual(feedClass).orElseThrow()).isNotBlank();
            assertThat(book.dryMatterRow(feedClass)).isPresent();
            assertThat(row.composition().values()).containsKeys(Analyte.CP, Analyte.TDN);
            if (feedClass != FeedClass.LEGUME_SILAGE && feedClass != FeedClass.CAKE) {
                assertThat(row.composition().values()).containsKeys(Analyte.CA, Analyte.P);
            }
        }
    }

    /** Five rows of four sources are one barley: CP 12 to 12.8 % and TDN 82.7 to 84.1 % as those rows print them. */
    @Test
    void aFeedIsOneEntryWithTheRangeOfItsSources() {
        var barley = book.feeds("barley grain");
        assertThat(barley).singleElement().satisfies(feed -> {
            assertThat(feed.rows())
                    .extracting(FeedBook.Row::id)
                    .containsExactly("C048", "C062", "C082", "C113", "C167");
            assertThat(feed.lead()).isEqualTo(book.usual(FeedClass.GRAIN).orElseThrow());
            assertThat(feed.range(Analyte.CP)).hasValue(new Analyte.Range(12, 12.8));
            assertThat(feed.range(Analyte.TDN)).hasValue(new Analyte.Range(82.7, 84.1));
            assertThat(feed.range(Analyte.SE)).isEmpty();
        });
        assertThat(book.feeds()).extracting(FeedBook.Feed::name).doesNotHaveDuplicates();
        assertThat(book.feeds().stream().mapToInt(f -> f.rows().size()).sum())
                .isEqualTo(book.rows().size());
        assertThat(book.feeds()).allSatisfy(f -> assertThat(book.feed(f.lead())).isEqualTo(f));
    }

    @Test
    void aFeedIsFoundByTypingItsName() {
        assertThat(book.named("f", " barley GRAIN ", FeedClass.GRAIN).id()).isEqualTo("C048");
        assertThat(book.named("f", "barley", FeedClass.GRAIN).id()).isEqualTo("C048");
        assertThat(book.named("f", "barley", FeedClass.CEREAL_HAY).id()).isEqualTo("C158");
        assertThat(book.named("f", "c062", FeedClass.GRAIN).id()).isEqualTo("C062");
        assertThat(book.named("f", "Alfalfa hay, midbloom", FeedClass.LEGUME_HAY)
                        .id())
                .isEqualTo("C154");
        assertThat(book.named("f", "corn stalks", FeedClass.CROP_RESIDUE))
                .isEqualTo(book.usual(FeedClass.CROP_RESIDUE).orElseThrow());
        assertThatThrownBy(() -> book.named("f", "barley", FeedClass.MINERAL))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("Barley hay")
                .hasMessageContaining("Barley straw");
        assertThatThrownBy(() -> book.named("f", "unobtainium", FeedClass.GRAIN))
                .isInstanceOf(Refused.class);
    }

    /** What people put up or buy under these names is not cobs, brewers grains or one pasture for all. */
    @Test
    void theKindsPeopleMeetAreTheirOwn() {
        assertThat(book.usual(FeedClass.CROP_RESIDUE).orElseThrow().group()).isEqualTo("corn stalks");
        assertThat(book.usual(FeedClass.CAKE).orElseThrow().group()).isEqualTo("range cake");
        assertThat(book.usual(FeedClass.TUB)).isEmpty();
        assertThat(book.feeds("pasture green")).hasSize(1);
        assertThat(Prior.of(FeedClass.PASTURE, "C182").orElseThrow().id()).isEqualTo("green_pasture");
        assertThat(Prior.of(FeedClass.PASTURE, "C183").orElseThrow().id()).isEqualTo("dormant_range");
        assertThat(Prior.of(FeedClass.CROP_RESIDUE, "").orElseThrow().id()).isEqualTo("corn_stover");
        assertThat(Prior.of(FeedClass.LEGUME_HAY, "").orElseThrow().id()).isEqualTo("alfalfa_hay");
        assertThat(Prior.of(FeedClass.LEGUME_HAY, "C154").orElseThrow().id())
                .isEqualTo("alfalfa_hay_of_known_maturity");
    }

    @Test
    void aRowWithoutDryMatterHasNoneAndMineralsAreCountedAsTheyCome() {
        assertThat(book.row("C088").orElseThrow().composition().knows(Analyte.DM))
                .isFalse();
        assertThat(book.row("C107").orElseThrow().composition().value(Analyte.DM))
                .hasValue(100);
        assertThat(book.row("c107").orElseThrow().composition().value(Analyte.CA))
                .hasValue(38);
    }

    @Test
    void aRowIsTakenByIdOrTheUsualOneOrRefused() {
        assertThat(book.rowFor("", FeedClass.GRASS_HAY)).isEqualTo(book.usual(FeedClass.GRASS_HAY));
        assertThat(book.rowFor("C161", FeedClass.GRASS_HAY).orElseThrow().feed())
                .isEqualTo("Meadow hay");
        assertThatThrownBy(() -> book.rowFor("C999", FeedClass.GRASS_HAY))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("C999: the feed book has no such row. Pick one by the feed's name");
    }

    @Test
    void everyFigureSaysItIsPublished() {
        assertThat(book.row("C048").orElseThrow().composition().values().values())
                .allSatisfy(known -> assertThat(known.origin()).isInstanceOf(Origin.Published.class));
    }
}
