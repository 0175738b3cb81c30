//! What something at the mouth is good for.

/// What a choice at the mouth is best for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum MouthGoal {
    /// Nothing at the mouth.
    Bare,
    /// A funnel as long as a wavelength, of the mouth that gains most.
    Funnel,
    /// The ring with the most gain.
    RingForGain,
    /// The cup with the most gain.
    CupForGain,
    /// The cup that sends the least into the rear half.
    CupForRear,
}
