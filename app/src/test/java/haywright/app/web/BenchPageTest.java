package haywright.app.web;

import static org.assertj.core.api.Assertions.assertThat;

import haywright.cattle.herd.Group;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

/** The bench of a group on a new ranch: small enough for a phone, with its workings on the page of its need. */
class BenchPageTest {
    @RegisterExtension
    private final OneRanch ranch = new OneRanch();

    private Group cows() {
        assertThat(ranch.send("lots/new/bales", OneRanch.hay("520", "1200 lb")).status())
                .isEqualTo(303);
        var cows = new LinkedHashMap<String, String>();
        cows.put("name", "Cows");
        cows.put("head", "180");
        cows.put("weight", "1300");
        cows.put("shrunk", "no");
        cows.put("weighedOn", "Nov 12, 2026");
        cows.put("conditionScore", "5");
        cows.put("breed", "Angus");
        var page = ranch.get("herd/new/mature_cow");
        var saved = ranch.submit(page, "herd/new/mature_cow", cows);
        assertThat(saved.status()).as(saved.body()).isEqualTo(303);
        var group = ranch.kept().groups().values().iterator().next();
        var weeks = new ArrayList<Group.CalvingWeek>();
        for (int i = 0; i < 9; i++) {
            weeks.add(new Group.CalvingWeek(LocalDate.of(2027, 3, 1).plusWeeks(i), 20));
        }
        var now = ranch.kept();
        var changed = now.with(new Group(
                group.id(),
                group.name(),
                group.animals(),
                group.head(),
                group.weight(),
                group.shrunk(),
                group.weighedOn(),
                group.matureWeight(),
                group.conditionScore(),
                group.breed(),
                weeks,
                null,
                null,
                null,
                group.gain(),
                null,
                null,
                null,
                null,
                List.of()));
        ranch.store()
                .ranches()
                .save(now.id(), ranch.store().ranches().open(now.id()).rev(), "test", "calving", changed);
        return changed.groups().get(group.id());
    }

    @Test
    void thePageOfManyCalvingWeeksIsSmallAndLinksToEveryLineOfTheirNeed() {
        var group = cows();
        var body = ranch.get("bench/" + group.id()).body();
        assertThat(body).contains("Ditch-side stack", " a head a day");
        assertThat(body.getBytes(StandardCharsets.UTF_8).length).isLessThan(300_000);
        assertThat(body).containsPattern("href=\"[^\"]*/herd/" + group.id() + "/need\"");
        var workings = ranch.get("herd/" + group.id() + "/need");
        assertThat(workings.status()).isEqualTo(200);
        assertThat(workings.body().getBytes(StandardCharsets.UTF_8).length).isLessThan(300_000);
        // every calving week opens, each with the lines that its need stands on
        assertThat(workings.body().split("<details class=\"alike\"", -1).length - 1)
                .isGreaterThanOrEqualTo(group.calving().size());
        assertThat(workings.body().split("<ol class=\"lines\">", -1).length - 1)
                .isGreaterThan(3 * group.calving().size());
    }

    /** A field that two rules refuse is one thing to fix. */
    @Test
    void anErrorListNamesEachFieldOnce() {
        var cow = Map.of(
                "name",
                "Cows",
                "head",
                "ten",
                "weight",
                "50",
                "shrunk",
                "no",
                "weighedOn",
                "Nov 12, 2026",
                "conditionScore",
                "44",
                "breed",
                "Angus");
        var refused = ranch.send("herd/new/mature_cow", cow).body();
        assertOnce(refused);
        var next = new LinkedHashMap<>(cow);
        next.put("head", "10");
        var again = ranch.send("herd/new/mature_cow", next).body();
        assertOnce(again);
        assertThat(again).doesNotContain("Weight at score 5.</b> 1 lb", "3,465");
    }

    private static void assertOnce(String page) {
        var list = page.replaceAll("(?s).*<div class=\"problems\"(.*?)</div>.*", "$1");
        var fields = Pattern.compile("href=\"#(f-[^\"]+)\"")
                .matcher(list)
                .results()
                .map(r -> r.group(1))
                .toList();
        assertThat(fields).isNotEmpty().doesNotHaveDuplicates();
    }
}
