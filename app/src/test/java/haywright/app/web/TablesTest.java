package haywright.app.web;

import static org.assertj.core.api.Assertions.assertThat;

import haywright.cattle.AnimalClass;
import haywright.forage.FeedClass;
import haywright.quantity.Unit;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

/** Lists from a spreadsheet, invented, brought in by their pages. */
class TablesTest {
    private static final String HERD = """
            Group\tClass\tHead\tWeight (lb)\tBCS\tBreed\tFirst calves due\tMature wt
            Old cows\tcows\t120\t1,310\t5\tAngus\tMar 10, 2027\t
            Heifers\tbred heifers\t25\t1,020\t5.5\tAngus\tFeb 20, 2027\t1,310
            Bulls\tBulls\t6\t2,000\t5\t\t\t
            """;

    private static final String LOTS = """
            Lot,Kind,Bale type,Bales,Tons,Bale weight lb,Storage,Price
            North stack,grass hay,round,200,120,,,140
            Shed hay,alfalfa,big squares,90,,"1,300",,210
            Straw,straw,,,45,,%s,
            """;

    @RegisterExtension
    private final OneRanch ranch = new OneRanch();

    private RawClient.Answer send(String at, String table, String... more) {
        var fields = new LinkedHashMap<String, String>();
        fields.put("table", table);
        for (int i = 0; i < more.length; i += 2) {
            fields.put(more[i], more[i + 1]);
        }
        return ranch.send(at, fields);
    }

    private static String seen(RawClient.Answer answer) {
        var seen = Pattern.compile("name=\"table-seen\" value=\"([0-9a-f]+)\"").matcher(answer.body());
        assertThat(seen.find()).isTrue();
        return seen.group(1);
    }

    @Test
    void aHerdIsShownFirstAndThenKept() {
        var first = send("herd/table", HERD);
        assertThat(first.status()).isEqualTo(200);
        assertThat(ranch.kept().groups()).isEmpty();
        assertThat(send("herd/table", HERD, "table-seen", seen(first)).status()).isEqualTo(303);
        var groups = List.copyOf(ranch.kept().groups().values());
        assertThat(groups).hasSize(3);
        assertThat(groups.get(0).animals()).isEqualTo(AnimalClass.MATURE_COW);
        assertThat(groups.get(0).weight().in(Unit.POUND)).isEqualTo(1310);
        assertThat(groups.get(0).breed()).isEqualTo("Angus");
        assertThat(groups.get(1).conditionScore()).isEqualTo(5.5);
        assertThat(groups.get(1).calving()).isNotEmpty();
        assertThat(groups.get(2).head()).isEqualTo(6);
    }

    @Test
    void oneWrongLineKeepsAllOfItOutAndIsNamed() {
        var wrong = HERD.replace("1,020", "heavy").replace("Bulls\tBulls", "Bulls\tllamas");
        var answer = send("herd/table", wrong, "table-seen", "0");
        assertThat(answer.status()).isEqualTo(422);
        assertThat(answer.body()).contains("heavy", "llamas", "Line 3", "Line 4");
        assertThat(ranch.kept().groups()).isEmpty();
        // left out by a tick, the rest is kept
        var fields = new LinkedHashMap<String, String>();
        fields.put("table", HERD.replace("Bulls\tBulls", "Bulls\tllamas"));
        fields.put("without", "4");
        var shown = ranch.send("herd/table", fields);
        fields.put("table-seen", seen(shown));
        assertThat(ranch.send("herd/table", fields).status()).isEqualTo(303);
        assertThat(ranch.kept().groups()).hasSize(2);
        // the same again: each name is there already
        var again = send("herd/table", HERD);
        assertThat(again.status()).isEqualTo(422);
        assertThat(ranch.kept().groups()).hasSize(2);
    }

    @Test
    void noColumnIsDroppedInSilenceAndNoneIsTakenTwice() {
        var asked = send("herd/table", HERD.replace("Breed", "Ear tag color"));
        assertThat(asked.status()).isEqualTo(422);
        assertThat(asked.body()).contains("Ear tag color", "name=\"confirm\"");
        assertThat(send("herd/table", HERD.replace("Breed", "Count")).status()).isEqualTo(422);
        assertThat(send("herd/table", HERD.replace("\t1,310\n", "\t1,310\tbrown\n"))
                        .body())
                .contains("brown");
        for (var no : List.of("", "only a line", "Group,Head\n", "a,b\n\"open,1\n")) {
            assertThat(send("herd/table", no).status()).as(no).isEqualTo(422);
        }
        assertThat(ranch.kept().groups()).isEmpty();
    }

    @Test
    void lotsComeAsBalesOrTonsAndBothHaveToAgree() {
        var lots = LOTS.formatted("stacked");
        var first = send("lots/table", lots);
        assertThat(first.status()).as(first.body()).isEqualTo(422);
        var storage = ranch.get("lots/new/weighed").body();
        assertThat(storage).contains("value=\"outside_on_ground\"");
        lots = LOTS.formatted("outside_on_ground");
        var shown = send("lots/table", lots);
        assertThat(shown.status()).isEqualTo(200);
        assertThat(send("lots/table", lots, "table-seen", seen(shown)).status()).isEqualTo(303);
        var kept = List.copyOf(ranch.kept().lots().values());
        assertThat(kept).hasSize(3);
        assertThat(kept.get(0).stock().bales()).isEqualTo(200);
        // 120 tons are 1,200 lb for each of 200
        assertThat(kept.get(0).replacementPrice()).isNotNull();
        assertThat(kept.get(1).feedClass()).isEqualTo(FeedClass.LEGUME_HAY);
        assertThat(haywright.outlook.LotTons.of(kept.get(0)).kg().orElseThrow())
                .isEqualTo(Unit.TON.toBase(120), org.assertj.core.api.Assertions.within(1.0));
        assertThat(haywright.outlook.LotTons.of(kept.get(2)).kg().orElseThrow())
                .isEqualTo(Unit.TON.toBase(45), org.assertj.core.api.Assertions.within(1.0));
        // 90 bales of 1,300 lb are 58.5 tons
        var apart = send("lots/table", lots.replace("Shed hay", "Barn hay").replace("90,,", "90,80,"));
        assertThat(apart.status()).isEqualTo(422);
        assertThat(apart.body()).contains("58.5");
        assertThat(ranch.kept().lots()).hasSize(3);
    }

    @Test
    void aTableChangedSinceItWasSeenIsSeenAgain() {
        var first = send("herd/table", HERD);
        var changed = HERD.replace("120", "220");
        assertThat(send("herd/table", changed, "table-seen", seen(first)).status())
                .isEqualTo(200);
        assertThat(ranch.kept().groups()).isEmpty();
        assertThat(ranch.get("herd/table").body()).contains("220");
    }

    @Test
    void aTableLeftUnfinishedIsKeptOnceItIsMended() {
        assertThat(send("herd/table", HERD.replace("1,020", "9x")).status()).isEqualTo(422);
        var shown = send("herd/table", HERD);
        assertThat(shown.status()).isEqualTo(200);
        var all = new LinkedHashMap<>(Map.of("table", HERD, "table-seen", seen(shown)));
        var draft = Pattern.compile("<input type=\"hidden\" name=\"(seen|draft)\" value=\"([^\"]*)\">")
                .matcher(ranch.get("herd/table").body());
        while (draft.find()) {
            all.put(draft.group(1), draft.group(2));
        }
        assertThat(all).containsKey("seen");
        assertThat(ranch.send("herd/table", all).status()).isEqualTo(303);
        assertThat(ranch.kept().groups()).hasSize(3);
    }

    @Test
    void whatLeavesAsCsvComesBack() {
        ranch.cows();
        var before = ranch.kept().groups().values().iterator().next();
        var csv = ranch.get("herd/herd.csv").body();
        var fields = Map.of("table", csv.replace(before.name(), "Copied cows"));
        var shown = ranch.send("herd/table", fields);
        assertThat(shown.status()).as(shown.body()).isEqualTo(200);
        assertThat(send("herd/table", fields.get("table"), "table-seen", seen(shown))
                        .status())
                .isEqualTo(303);
        var copy = ranch.kept().groups().values().stream()
                .filter(group -> group.name().equals("Copied cows"))
                .findFirst()
                .orElseThrow();
        assertThat(copy.head()).isEqualTo(before.head());
        assertThat(copy.calving()).isEqualTo(before.calving());
        assertThat(copy.matureWeight()).isEqualTo(before.matureWeight());
    }
}
