package org.thumbseal.spares;

import java.util.List;

/** A stock file to begin with; parts and numbers of a place that does not exist. */
public final class StockTemplate {
  private StockTemplate() {}

  /** Its lines, without their ends. */
  public static List<String> lines() {
    return List.of(
        "part,item,quantity,counted_on,minimum,lead_days,pack,on_order,used_per_month,note",
        "Bacterial filter,filter,24,2026-03-02,6,21,10,0,,hydrophobic",
        "Silicone tubing 8 mm,tubing,12,2026-03-02,4,14,5,0,,2 m lengths",
        "Gasket 2 L jar,gasket,8,2026-03-02,3,42,5,0,,",
        "Gasket 1 L jar,gasket,5,2026-03-02,2,42,5,0,,",
        "Suction catheter 14 Fr,catheter,180,2026-03-02,60,14,50,0,90,used on wards: no check"
            + " records it");
  }
}
