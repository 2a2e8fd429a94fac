package haywright.app.web.bench;

import haywright.app.exchange.csv.HerdOut;
import haywright.app.web.Page;
import haywright.app.web.Routes;
import haywright.cattle.herd.Group;
import haywright.ration.Ration;
import haywright.workings.Refused;
import java.util.ArrayList;

/** The groups of a ranch with their rations, one group's ration, a mix by hand, and what the ranch wants of it. */
public final class BenchPages {
    private static final String CANNOT = "haywright/app/web/bench/cannot.jte";
    private static final String WISHES = "haywright/app/web/bench/wishes.jte";

    private BenchPages() {}

    public static void routes(Routes on) {
        on.get("bench", BenchPages::list);
        on.get("bench/rations.csv", page -> page.csv("rations", HerdOut.rations(page.rations())));
        ShortPages.routes(on); // before the groups, whose path would take it
        on.get("bench/{group}", BenchPages::ration);
        on.get("bench/{group}/workings", BenchPages::workings);
        on.get("bench/{group}/tests", BenchPages::tests);
        on.get("bench/{group}/ration.mps", BenchPages::mps);
        HandPages.routes(on);
        BuyPages.routes(on);
        on.get("bench/{group}/wishes", BenchPages::wishes);
        on.post("bench/{group}/wishes", BenchPages::saveWishes);
    }

    private static Group group(Page page) {
        return page.find(page.ranch().groups(), "group");
    }

    private static void list(Page page) {
        var rows = new ArrayList<BenchView.GroupRow>();
        for (var group : page.ranch().groups().values()) {
            rows.add(BenchView.row(page.offers(group)));
        }
        page.show("haywright/app/web/bench/bench.jte", new BenchView.Groups(rows, ShortPages.headline(page.rations())));
    }

    private static void ration(Page page) {
        var group = group(page);
        try {
            page.show("haywright/app/web/bench/ration.jte", BenchView.of(page.offers(group)));
        } catch (Refused refused) {
            page.show(CANNOT, new BenchView.Cannot(group, refused.problems()));
        }
    }

    private static void workings(Page page) {
        var group = group(page);
        try {
            page.show("haywright/app/web/bench/workings.jte", WorkingsView.of(page.offers(group)));
        } catch (Refused refused) {
            page.show(CANNOT, new BenchView.Cannot(group, refused.problems()));
        }
    }

    /** A page where scripts are off, and the lines of it where they are on: what a test would buy takes a second or two. */
    private static void tests(Page page) {
        var group = group(page);
        try {
            page.show("haywright/app/web/bench/testsPage.jte", page.offers(group));
        } catch (Refused refused) {
            page.show(CANNOT, new BenchView.Cannot(group, refused.problems()));
        }
    }

    private static void mps(Page page) {
        var answer = page.rations().ration(group(page));
        if (answer instanceof Ration ration) {
            page.http()
                    .contentType("text/plain; charset=utf-8")
                    .header("Content-Disposition", "attachment; filename=\"ration.mps\"")
                    .result(ration.program().toMps());
        } else {
            page.http().status(404).result("There is no ration for this group, and so no program of one.");
        }
    }

    private static String wishKey(Group group) {
        return "bench/" + group.id() + "/wishes";
    }

    private static void wishes(Page page) {
        var group = group(page);
        var form = page.form(wishKey(group), () -> WishForm.known(page.ranch(), group));
        page.show(WISHES, WishForm.view(page.ranch(), group, form));
    }

    private static void saveWishes(Page page) {
        var group = group(page);
        var form = page.posted(wishKey(group));
        var wanted = WishForm.read(form, page.ranch(), group);
        if (wanted.isEmpty()) {
            page.reject(form, WISHES, WishForm.view(page.ranch(), group, form));
            return;
        }
        page.save(
                form,
                "Limits on a ration changed: " + group.name(),
                ranch -> ranch.with(wanted.get()),
                "bench/" + group.id());
    }
}
