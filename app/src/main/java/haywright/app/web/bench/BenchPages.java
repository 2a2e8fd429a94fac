package haywright.app.web.bench;

import haywright.app.web.Page;
import haywright.app.web.Routes;
import haywright.cattle.herd.Group;
import haywright.outlook.Yard;
import haywright.ranch.FedNow;
import haywright.ration.HandMix;
import haywright.ration.Ration;
import haywright.workings.Refused;
import java.util.ArrayList;
import java.util.Optional;

/** The groups of a ranch with their rations, one group's ration, a mix by hand, and what the ranch wants of it. */
public final class BenchPages {
    private static final String HAND = "haywright/app/web/bench/hand.jte";
    private static final String CANNOT = "haywright/app/web/bench/cannot.jte";
    private static final String WISHES = "haywright/app/web/bench/wishes.jte";

    private BenchPages() {}

    public static void routes(Routes on) {
        on.get("bench", BenchPages::list);
        ShortPages.routes(on); // before the groups, whose path would take it
        on.get("bench/{group}", BenchPages::ration);
        on.get("bench/{group}/ration.mps", BenchPages::mps);
        on.get("bench/{group}/hand", BenchPages::hand);
        on.post("bench/{group}/hand", BenchPages::judge);
        on.get("bench/{group}/wishes", BenchPages::wishes);
        on.post("bench/{group}/wishes", BenchPages::saveWishes);
    }

    private static Group group(Page page) {
        return page.find(page.ranch().groups(), "group");
    }

    private static void list(Page page) {
        var yard = page.yard();
        var rows = new ArrayList<BenchView.GroupRow>();
        for (var group : page.ranch().groups().values()) {
            rows.add(BenchView.row(yard, group));
        }
        page.show("haywright/app/web/bench/bench.jte", new BenchView.Groups(rows, ShortPages.headline(yard)));
    }

    private static void ration(Page page) {
        var group = group(page);
        try {
            page.show("haywright/app/web/bench/ration.jte", BenchView.of(page.yard(), group));
        } catch (Refused refused) {
            page.show(CANNOT, new BenchView.Cannot(group, refused.problems()));
        }
    }

    private static void mps(Page page) {
        var answer = page.yard().ration(group(page));
        if (answer instanceof Ration ration) {
            page.http()
                    .contentType("text/plain; charset=utf-8")
                    .header("Content-Disposition", "attachment; filename=\"ration.mps\"")
                    .result(ration.program().toMps());
        } else {
            page.http().status(404).result("There is no ration for this group, and so no program of one.");
        }
    }

    private static String handKey(Group group) {
        return "hand/" + group.id();
    }

    private static void hand(Page page) {
        var group = group(page);
        var form = page.form(handKey(group), () -> HandForm.known(page.ranch(), group));
        page.show(HAND, new HandForm.View(group, form, HandForm.asks(page.ranch()), Optional.empty()));
    }

    /** Judges what was typed; on the other button keeps it as what the group is fed now. */
    private static void judge(Page page) {
        var group = group(page);
        var form = page.posted(handKey(group));
        var asks = HandForm.asks(page.ranch());
        var amounts = HandForm.read(form, page.ranch());
        if (amounts.isEmpty()) {
            page.reject(form, HAND, new HandForm.View(group, form, asks, Optional.empty()));
            return;
        }
        var fed = new FedNow(group.id(), amounts.get());
        if ("keep".equals(page.http().formParam("act"))) {
            page.save(
                    form, "What is fed now changed: " + group.name(), ranch -> ranch.with(fed), "bench/" + group.id());
            return;
        }
        Optional<HandMix> mix = new Yard(page.ranch().with(fed), page.today()).fedNow(group);
        page.show(HAND, new HandForm.View(group, form, asks, mix.map(BenchView::judged)));
    }

    private static String wishKey(Group group) {
        return "wishes/" + group.id();
    }

    private static void wishes(Page page) {
        var group = group(page);
        var form = page.form(wishKey(group), () -> WishForm.known(page.ranch(), group));
        page.show(WISHES, new WishForm.View(group, form, WishForm.rows(page.ranch())));
    }

    private static void saveWishes(Page page) {
        var group = group(page);
        var form = page.posted(wishKey(group));
        var wanted = WishForm.read(form, page.ranch(), group);
        if (wanted.isEmpty()) {
            page.reject(form, WISHES, new WishForm.View(group, form, WishForm.rows(page.ranch())));
            return;
        }
        page.save(
                form,
                "What is wanted of a ration changed: " + group.name(),
                ranch -> ranch.with(wanted.get()),
                "bench/" + group.id());
    }
}
