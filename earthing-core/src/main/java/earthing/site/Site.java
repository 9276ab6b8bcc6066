package earthing.site;

import java.util.List;
import org.jspecify.annotations.Nullable;

/** A pole site, as its file describes it. */
public record Site(
        @Key(most = 1, required = true, example = "1", doc = "Version of the site-file format; this library reads 1.")
        Integer fileVersion,

        @Key(required = true, doc = "Which site this is and what stage the design has reached.")
        SiteIdentity site,

        @Key(required = true, doc = "The network the pole belongs to.")
        SystemData system,

        @Key(brief = true, doc = "How and how fast an earth fault is cleared.") @Nullable
        Protection protection,

        @Key(brief = true, doc = "The ground at the pole.") @Nullable
        Soil soil,

        @Key(brief = true, doc = "The pole.") @Nullable Pole pole,

        @Key(brief = true, doc = "The tank of the switchgear, high on the pole.") @Nullable
        Tank tank,

        @Key(doc = "The overhead line at this pole.") @Nullable
        Line line,

        @Key(brief = true, doc = "The surge arresters.") @Nullable
        Arresters arresters,

        @Key(doc = "Other high-voltage equipment on the pole, such as an external voltage transformer.")
        List<HighVoltageEquipment> otherEquipment,

        @Key(brief = true, doc = "The earthing conductor from the tank down the pole to the electrode.") @Nullable
        MainEarth mainEarth,

        @Key(brief = true, doc = "The buried electrodes.") List<Electrode> electrodes,

        @Key(brief = true, doc = "The control cubicle at working height.") @Nullable
        Cubicle cubicle,

        @Key(brief = true, doc = "The cable between tank and cubicle.") @Nullable
        ControlCable controlCable,

        @Key(doc = "The arrangement in which tank, cable and cubicle passed an impulse test together.") @Nullable
        TestedArrangement testedArrangement,

        @Key(doc = "Metal stays.") List<Stay> stays,

        @Key(doc = "A high-voltage cable that ends at this pole.") @Nullable
        HighVoltageCable hvCable,

        @Key(doc = "A distribution transformer on the same pole.") @Nullable
        LowVoltageTransformer lvTransformer,

        @Key(doc = "The low-voltage supply of the cubicle.") @Nullable
        AuxiliarySupply auxiliarySupply,

        @Key(doc = "Antenna and its feeder.") @Nullable Antenna antenna,

        @Key(doc = "Conducting things nearby that could carry a potential away or bring one in.")
        List<Neighbour> neighbours,

        @Key(doc = "Which surges are studied.") @Nullable Surges surges,

        @Key(brief = true, doc = "The rules against which the site is checked.") @Nullable
        Criteria criteria,

        @Key(doc = "Readings taken on site.") List<Measurement> measurements,

        @Key(doc = "Results that the author expects, so that a repository can hold a design to its numbers.")
        List<Expectation> expect,

        @Key(doc = "How the bounded inputs are spread, for the command spread.") @Nullable
        Uncertainty uncertainty) {

    /**
     * Copies the lists.
     *
     */
    public Site {
        otherEquipment = List.copyOf(otherEquipment);
        electrodes = List.copyOf(electrodes);
        stays = List.copyOf(stays);
        neighbours = List.copyOf(neighbours);
        measurements = List.copyOf(measurements);
        expect = List.copyOf(expect);
    }
}
