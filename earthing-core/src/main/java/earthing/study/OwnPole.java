package earthing.study;

import earthing.quantity.Measure.Bound;
import earthing.site.ScreenBond;
import earthing.site.Site;

/**
 * The site as it is, ready for its surge circuit.
 *
 * @param arranged the site with the arrangement and screen bond written out
 * @param earth its electrodes, nominal soil
 * @param circumstances arrangement and screen bond as a case
 */
record OwnPole(Site arranged, SiteEarth earth, Case circumstances) {

    static OwnPole of(Site site, EarthCache cache, Inputs in) throws MissingInput {
        if (site.cubicle() == null) {
            throw new MissingInput("the file describes no cubicle", "cubicle");
        }
        Arrangement own = Arrangement.of(site.cubicle().earth())
                .orElseThrow(() -> new MissingInput("how the cubicle is earthed is declared unknown", "cubicle.earth"));
        ScreenBond bond = SurgeStudy.bond(site);
        if (bond == ScreenBond.UNKNOWN) {
            throw new MissingInput("how the screen is bonded is declared unknown", "control-cable.screen.bond");
        }
        Site arranged = SiteVariant.screened(SiteVariant.arranged(site, own, in), bond, in);
        return new OwnPole(
                arranged,
                SiteEarth.of(arranged, Bound.NOMINAL, in, cache),
                Case.NONE.with("arrangement", own.word()).with("screen-bond", SurgeStudy.word(bond)));
    }

    /** Resistance of the main electrode [Ω]; 0 where there is none. */
    double resistance() {
        return EarthPaths.mainElectrode(arranged)
                .filter(earth.names()::contains)
                .map(name -> earth.resistance(name, name))
                .orElse(0.0);
    }
}
