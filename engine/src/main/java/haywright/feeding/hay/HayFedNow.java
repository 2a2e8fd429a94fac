package haywright.feeding.hay;

import haywright.cattle.herd.Group;
import haywright.feeding.Rations;
import haywright.outlook.Yard;
import haywright.quantity.Unit;
import haywright.ration.Allotment;
import haywright.ration.Ration;
import java.util.Objects;
import java.util.UUID;

/** Hay and silage that go out a day as all groups are fed now, or by their rations where nobody said. */
final class HayFedNow {
    private final Rations rations;
    private final Yard yard;
    private final HayTons tons;
    private final Allotment byNeed;

    HayFedNow(Rations rations, HayTons tons, Allotment byNeed) {
        this.rations = rations;
        this.tons = tons;
        this.byNeed = byNeed;
        yard = rations.yard();
    }

    /** Whether somebody said it of every group. */
    boolean isSaid() {
        return yard.ranch().groups().keySet().stream().allMatch(this::isSaid);
    }

    /** kg of dry matter. */
    double dryADay() {
        return yard.ranch().groups().values().stream().mapToDouble(this::putOut).sum();
    }

    private boolean isSaid(UUID group) {
        var now = yard.ranch().fedNow().get(group);
        return now != null && !now.amounts().isEmpty();
    }

    /** kg of dry matter of hay and silage a group is put out a day, as it is fed now or by its ration. */
    private double putOut(Group group) {
        var now = yard.ranch().fedNow().get(group.id());
        double head = group.head();
        if (isSaid(group.id())) {
            var amounts = Objects.requireNonNull(now).amounts();
            return head
                    * tons.hay().stream()
                            .mapToDouble(feed -> {
                                var amount =
                                        amounts.get(UUID.fromString(feed.feed().id()));
                                return amount == null ? 0 : HayTons.dry(feed, amount.in(Unit.KILOGRAM_A_DAY));
                            })
                            .sum();
        }
        if (rations.ration(group) instanceof Ration ration) {
            return head
                    * rations.weighable(group, ration).portions().stream()
                            .filter(portion -> portion.feed().isHayOrSilage())
                            .mapToDouble(portion -> HayTons.dry(portion.feed(), portion.kgPutOut()))
                            .sum();
        }
        return head * HayTons.hayADay(byNeed, group, 0);
    }
}
